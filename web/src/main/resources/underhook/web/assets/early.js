// Asks for what the first page shows while the page's own files are still on their way; api.js takes the answers.
{
  let known = {};
  try {
    known = JSON.parse(localStorage.getItem('underhook') ?? '{}');
  } catch {
    // A browser that keeps nothing starts at the list of jobs.
  }
  const id = new URLSearchParams(location.hash.slice(1)).get('job') ?? known.jobId;
  const job = id && `/api/jobs/${encodeURIComponent(id)}`;
  const paths = ['/api/session', ...(id ? [job] : []), ...(id && (known.jobId !== id || known.isPlanned !== false) ? [`${job}/plan`, `${job}/map${known.reader?.units === 'us' ? '?heights=ft' : ''}`] : [])];
  window.early = new Map(paths.map((path) => [path, fetch(path, { cache: 'no-store' }).catch(() => null)]));
}
