// What the page knows. Who holds this device, and how they like it, stands in localStorage; the last
// news and the outbox in IndexedDB; where the page is, behind the # of its address.
import { Outbox, newId } from './outbox.js';
import { foresee } from './standing.js';

const job = decodeURIComponent(location.pathname.split('/')[2] ?? '');
const NAME = `underhook-day-${job}`;
const listeners = new Set();

const stored = (() => {
  try { return JSON.parse(localStorage.getItem(NAME) ?? '{}'); } catch { return {}; }
})();

export const state = {
  job, online: false, day: null, seenAt: 0, places: [], emergency: null, addresses: [], stockedAt: 0, waiting: [], sent: [], shiftMs: 0, outbox: null, ask: null, typed: '', orders: null,
  me: null, reader: { theme: 'system', language: 'en', mm: null, north: 'true', units: 'metric' }, ...stored, at: location.hash.slice(1),
};
state.reader = { theme: 'system', language: 'en', mm: null, north: 'true', units: 'metric', ...stored.reader };

export function set(change) {
  Object.assign(state, change);
  if ('me' in change || 'reader' in change) localStorage.setItem(NAME, JSON.stringify({ me: state.me, reader: state.reader }));
  for (const listener of listeners) listener();
}

export const listen = (listener) => listeners.add(listener);

// What stands at the top of a page must be seen first, wherever the one before it was scrolled to.
addEventListener('hashchange', () => {
  set({ at: location.hash.slice(1), typed: '', ask: null });
  scrollTo(0, 0);
});

/** What lies in the outbox: what the server does not have yet, and what it has but its last news do not tell of. */
export async function lying() {
  const all = await state.outbox.all();
  return { waiting: all.filter((entry) => !entry.number), sent: all.filter((entry) => entry.number) };
}

/** Reads the outbox anew. */
export async function entries() {
  set(await lying());
}

/** Opens the outbox and brings back what was known when there was network. */
export async function begin() {
  state.outbox = await Outbox.of(job);
  const [day, places, emergency] = await Promise.all(['day', 'places', 'emergency'].map((name) => state.outbox.kept(name)));
  set({ ...(day ?? {}), places: places ?? [], emergency: emergency ?? null, stockedAt: emergency?.seenAt ?? 0 });
  await entries();
}

/** The time on this device, or in a rehearsal that of the day that is rehearsed. */
export const now = () => Date.now() + state.shiftMs;

/** So far a device's clock may be off before anybody is told. */
export const CLOCK_OFF_MS = 30 * 1000;

/** When something is tapped: after all that this device has heard of, else clocks that are a little off turn the two words of a release round. */
function after() {
  const heard = [...(state.day?.taps ?? []), ...[...state.sent, ...state.waiting].map((entry) => entry.tap)].map((one) => Date.parse(one.at));
  return Math.max(now(), ...heard.map((at) => at + 1).filter((at) => at - now() < CLOCK_OFF_MS));
}

/** How everything stands as far as this device knows: the server's last news and what was tapped here since. */
export const foreseen = () => foresee(state.day, [...state.sent, ...state.waiting.filter((entry) => !entry.refused)].map((entry) => entry.tap));

/** Keeps a tap on this device; it is shown from now on and sent as soon as that can be done. */
export async function tap(kind, more = {}) {
  const made = {
    id: newId(), at: new Date(after()).toISOString(), by: state.me.by, role: state.me.role, device: state.me.device, kind,
    loads: [], place: state.me.place ?? '', note: '',
    // Nobody could have stopped what was done without network: it is a fact.
    anyway: !state.online, ...more,
  };
  await state.outbox.add(made);
  await entries();
  return made;
}
