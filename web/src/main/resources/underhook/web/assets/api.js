// Speaks with the server on this machine. Every change carries the token of this run and the
// revision it was made against; a refusal comes back as an Error with the server's own sentence.
let token = document.querySelector('meta[name=token]').content;

/** What was asked for before this file was there, once. */
function asked(path, options) {
  const answer = options.method ? null : window.early?.get(path);
  window.early?.delete(path);
  return answer;
}

async function ask(path, options = {}) {
  let answer;
  try {
    answer = (await asked(path, options)) ?? await fetch(path, { cache: 'no-store', ...options });
  } catch {
    throw Object.assign(new Error('offline'), { status: 0 });
  }
  const type = answer.headers.get('Content-Type') ?? '';
  const body = type.includes('json') ? await answer.json() : await answer.text();
  if (!answer.ok) {
    const words = body?.error ?? body?.message ?? `${answer.status}`;
    throw Object.assign(new Error(words), { status: answer.status, body });
  }
  return body;
}

const send = (method, path, body, type = 'application/json') => ask(path, {
  method,
  headers: { 'X-Underhook-Token': token, 'Content-Type': type },
  body: type === 'application/json' ? JSON.stringify(body ?? {}) : body,
});

const job = (id) => `/api/jobs/${encodeURIComponent(id)}`;
const lift = (id, n) => `${job(id)}/plan/lifts/${n}`;
const path = (name) => name.split('/').map(encodeURIComponent).join('/');

export const api = {
  session: async () => ({ ...await ask('/api/session'), askedAt: Date.now() }),
  newJob: (job) => send('POST', '/api/jobs', job),
  job: (id) => ask(job(id)),
  dropFile: (id, file, revision) => send('POST', `${job(id)}/files/${encodeURIComponent(file.name)}?revision=${revision}`, file, 'application/octet-stream'),
  setRole: (id, name, role, revision, details) => send('PUT', `${job(id)}/files/${encodeURIComponent(name)}/role`, { role, revision, details }),
  table: (id, name) => ask(`${job(id)}/tables/${path(name)}`),
  changeTable: (id, name, change) => send('PATCH', `${job(id)}/tables/${path(name)}`, change),
  text: (id, name) => ask(`${job(id)}/text/${path(name)}`),
  setText: (id, name, revision, text) => send('PUT', `${job(id)}/text/${path(name)}`, { revision, text }),
  undo: (id, revision) => send('POST', `${job(id)}/undo`, { revision }),
  redo: (id, revision) => send('POST', `${job(id)}/redo`, { revision }),
  map: (id, heights) => ask(`${job(id)}/map${heights === 'ft' ? '?heights=ft' : ''}`),
  /** The whole picture, or nothing: an image element that is cut off while it loads only says that it cannot decode. */
  relief: async (id, w, h, bounds, head) => {
    const answer = await fetch(`${job(id)}/relief.png?w=${w}&h=${h}&bounds=${bounds}&r=${encodeURIComponent(head ?? '')}`);
    return answer.ok ? answer.blob() : null;
  },
  heights: (id, w, h) => ask(`${job(id)}/heights?w=${w}&h=${h}`),
  changeFeature: (id, change) => send('PATCH', `${job(id)}/features`, change),
  startPlan: (id, seconds, seed) => send('POST', `${job(id)}/plan`, { seconds, seed }),
  stopPlan: (id) => send('POST', `${job(id)}/plan/stop`),
  plan: (id) => ask(`${job(id)}/plan`),
  section: (id, n, leg) => ask(`${lift(id, n)}/section/${leg}`),
  rose: (id, n) => ask(`${lift(id, n)}/rose`),
  limits: (id, n) => ask(`${lift(id, n)}/limits`),
  ahead: (id) => ask(`${job(id)}/ahead`),
  flown: (id) => ask(`${job(id)}/day/flown`),
  stopWhatIf: (id) => send('POST', `${job(id)}/whatif/stop`),
  whatIf: (id, change) => send('POST', `${job(id)}/whatif`, change),
  acceptWhatIf: (id, change) => send('POST', `${job(id)}/whatif/accept`, change),
  ways: (id) => ask(`${job(id)}/ways`),
  workOutWay: (id, n) => send('POST', `${job(id)}/ways/${n}`),
  stopWays: (id) => send('POST', `${job(id)}/ways/stop`),
  override: (id, change) => send('POST', `${job(id)}/overrides`, change),
  versions: (id) => ask(`${job(id)}/versions`),
  differences: (id, a, b) => ask(`${job(id)}/versions/${encodeURIComponent(a)}..${encodeURIComponent(b)}`),
  fileUrl: (id, name) => `${job(id)}/plan/files/${encodeURIComponent(name)}`,
  handoverUrl: (id) => `${job(id)}/handover`,
  takeOver: (file) => send('POST', '/api/jobs/handover', file, 'application/octet-stream'),
  /** A restarted server has a new token; the page it hands out carries it. */
  renew: async () => {
    const page = new DOMParser().parseFromString(await ask('/'), 'text/html');
    token = page.querySelector('meta[name=token]').content;
  },
  events: (id) => new EventSource(`${job(id)}/events`),
};
