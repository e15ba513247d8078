// The only one that speaks with the server: brings the outbox over, fetches news, hears of more.
import { CLOCK_OFF_MS, state, set, entries, lying } from './state.js';

const TRY_AGAIN_S = [1, 2, 4, 8, 15, 30];
const PATIENCE_MS = 8000;

let token = document.querySelector('meta[name=token]').content;
let tries = 0, timer = 0, sending = false, again = false, fetching = false, stale = false;

const base = () => `/api/jobs/${encodeURIComponent(state.job)}/day`;

async function ask(path, options = {}) {
  // A network that swallows everything must not hold the outbox for ever.
  const answer = await fetch(path, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS), ...options });
  if (!answer.ok) {
    const body = await answer.json().catch(() => ({}));
    throw Object.assign(new Error(body.error ?? String(answer.status)), { status: answer.status });
  }
  return answer.json();
}

/** A restarted server has a new token; the page it hands out carries it. */
async function renew() {
  const answer = await fetch(location.pathname, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE_MS) });
  if (answer.redirected) { location.assign(answer.url); return; }
  token = new DOMParser().parseFromString(await answer.text(), 'text/html').querySelector('meta[name=token]').content;
}

const online = (is) => { if (state.online !== is) set({ online: is }); };

/** Hands over what waits, in its order, until the server has it on its disk. */
export async function deliver() {
  if (sending) { again = true; return; }
  sending = true;
  clearTimeout(timer);
  try {
    const waiting = (await lying()).waiting.filter((entry) => !entry.refused);
    if (waiting.length) {
      const sentAt = new Date(Date.now() + state.shiftMs).toISOString();
      const taps = waiting.slice(0, 200).map((entry) => ({ ...entry.tap, sentAt }));
      const body = JSON.stringify({ taps });
      const done = await ask(`${base()}/taps`, { method: 'POST', body, headers: { 'X-Underhook-Token': token, 'Content-Type': 'application/json' } });
      for (const answer of done.answers) {
        const entry = waiting.find((one) => one.tap.id === answer.id);
        if (entry && answer.state === 'kept') await state.outbox.change({ ...entry, number: answer.number, keptAt: Date.now() });
        else if (entry) await state.outbox.change({ ...entry, refused: { state: answer.state, why: answer.why?.message ?? answer.why } });
      }
      again ||= waiting.length > taps.length;
      online(true);
      await entries();
      news();
    }
    tries = 0;
  } catch (failed) {
    if (failed.status === 403) await renew().catch(() => online(false));
    else if (!failed.status) online(false);
    timer = setTimeout(deliver, 1000 * TRY_AGAIN_S[Math.min(tries++, TRY_AGAIN_S.length - 1)]);
  }
  sending = false;
  if (again) { again = false; deliver(); }
}

/** Ends when all that waited here is with the server; fails when that cannot be reached. */
export async function delivered() {
  await deliver();
  while (sending || (await lying()).waiting.some((entry) => !entry.refused)) {
    if (!state.online) throw new Error('offline');
    await new Promise((done) => { setTimeout(done, 50); });
  }
}

// A server half a day off is one that rehearses another day; then this device goes by its clock.
const REHEARSAL_MS = 12 * 3600 * 1000;

function clocks(serverNow) {
  const off = Date.parse(serverNow) - Date.now();
  if (Math.abs(off) > REHEARSAL_MS) return { shiftMs: Math.abs(off - state.shiftMs) < CLOCK_OFF_MS ? state.shiftMs : off, clockAheadMin: 0 };
  return { shiftMs: 0, clockAheadMin: Math.abs(off) > CLOCK_OFF_MS ? Math.round(-off / 60000) || Math.sign(-off) : 0 };
}

/** Lets go what the news know of. What the server once had and has no more is sent again. */
async function settle(rows, askedAt) {
  let lost = false;
  for (const entry of (await lying()).sent) {
    if (entry.number <= rows) await state.outbox.drop(entry.seq);
    else if (entry.keptAt < askedAt) { lost = true; await state.outbox.change({ ...entry, number: null }); }
  }
  return lost;
}

/** Fetches how the day stands. */
export async function news() {
  if (fetching) { stale = true; return; }
  fetching = true;
  try {
    const askedAt = Date.now();
    const day = await ask(base());
    const lost = await settle(day.log.rows, askedAt);
    set({ day, seenAt: Date.now(), online: true, ...clocks(day.now), ...(await lying()) });
    if (lost) deliver();
    await state.outbox.keep('day', { day, seenAt: state.seenAt, shiftMs: state.shiftMs });
  } catch (failed) {
    if (!failed.status) online(false);
  }
  fetching = false;
  if (stale) { stale = false; news(); }
}

/** Fetches what must be there when the network is not: every place, and the sheets for the worst case. */
export async function stock() {
  try {
    ask(`${base()}/addresses`).then(({ addresses }) => set({ addresses })).catch(() => {});
    const [places, emergency] = await Promise.all([ask(`${base()}/places`).catch(() => null), ask(`${base()}/emergency`)]);
    if (places) { set({ places: places.places }); await state.outbox.keep('places', places.places); }
    set({ emergency, stockedAt: Date.now() });
    await state.outbox.keep('emergency', { ...emergency, seenAt: Date.now() });
  } catch (failed) {
    if (!failed.status) online(false);
  }
}

export const post = (path, body) => ask(`${base()}/${path}`, body === undefined ? {} : {
  method: 'POST', body: JSON.stringify(body), signal: AbortSignal.timeout(120000), headers: { 'X-Underhook-Token': token, 'Content-Type': 'application/json' } });

/** Hears of every tap of the others; on each hello whatever waits is sent at once. */
export function listen() {
  const stream = new EventSource(`${base()}/events`);
  let stocking = 0;
  stream.addEventListener('hello', () => { online(true); tries = 0; deliver(); news(); stock(); });
  stream.addEventListener('tapped', () => { news(); clearTimeout(stocking); stocking = setTimeout(stock, 1500); });
  for (const kind of ['planned', 'changed']) stream.addEventListener(kind, () => { news(); stock(); });
  stream.onerror = () => {
    online(false);
    // After a refusal, unlike after a cut, the browser does not try again by itself.
    if (stream.readyState === EventSource.CLOSED) setTimeout(listen, 5000);
  };
  return stream;
}
