// The one place where the page keeps what it shows. Changes go through set(); whoever draws
// listens. Where the reader is (job, lift, panel) stands in the address, so that closing the
// browser or the server loses nothing; how the reader likes it stands in localStorage.
const listeners = new Set();

const stored = (() => {
  try {
    return JSON.parse(localStorage.getItem('underhook') ?? '{}');
  } catch {
    return {};
  }
})();

const fromAddress = () => {
  const hash = new URLSearchParams(location.hash.slice(1));
  const lift = Number(hash.get('lift'));
  return { jobId: hash.get('job') ?? stored.jobId ?? null, lift: lift || null, panel: hash.get('panel') ?? 'day' };
};

export const state = {
  session: null, job: null, plan: null, map: null, ...fromAddress(),
  leg: 0, at: 0, run: null, note: null, dialog: null, sheet: {}, saving: 0,
  reader: { theme: 'system', units: 'metric', north: 'true', language: 'en', mm: null, ...stored.reader },
};

/** Whether this reader wants pounds and feet. */
export const us = () => state.reader.units === 'us';

export function set(change) {
  Object.assign(state, change);
  remember();
  for (const listener of listeners) listener(state, change);
}

export const setReader = (change) => set({ reader: { ...state.reader, ...change } });

export const listen = (listener) => listeners.add(listener);

function remember() {
  localStorage.setItem('underhook', JSON.stringify({ jobId: state.jobId, isPlanned: Boolean(state.plan), reader: state.reader }));
  const hash = new URLSearchParams();
  if (state.jobId) hash.set('job', state.jobId);
  if (state.lift) hash.set('lift', state.lift);
  hash.set('panel', state.panel);
  history.replaceState(null, '', `#${hash}`);
}
