// The devices' pages of a flying day: one address for each job, the page behind the #.
import { html, nothing, render } from '/lib/lit/lit-html.js';
import { state, set, begin, listen as changed } from './state.js';
import { deliver, listen, news } from './link.js';
import { said, speak, t } from './words.js';
import { local } from './units.js';
import { join } from './join.js';
import { loader } from './loader.js';
import { pilot } from './pilot.js';
import { crew } from './crew.js';
import { emergency } from './emergency.js';
import { report } from './report.js';

const PAGES = { loader, pilot, crew, emergency, report, join };
const root = document.getElementById('day');

const link = () => {
  const count = state.waiting.filter((entry) => !entry.refused).length;
  const ahead = state.clockAheadMin ?? 0;
  return html`<header><div class=${`link ${state.online ? 'on' : 'off'}`} role="status"><b>${t(state.online ? 'link.on' : 'link.off')}</b>
    <span>${count === 0 ? t('link.none') : t(count === 1 ? 'link.waiting1' : 'link.waiting', { count })}</span>
    ${state.day ? html`<span>${t('link.log', { rows: state.day.log.rows, hash: state.day.log.hash.slice(0, 6) })}</span>` : nothing}
    ${!state.online && state.day ? html`<span>${t('link.news', { time: local(state.day.now, false) })}</span>` : nothing}</div>
    ${state.shiftMs ? html`<p class="caution">${t('link.rehearsal', { time: local(new Date(Date.now() + state.shiftMs).toISOString(), false) })}</p>` : nothing}
    ${state.day?.plan?.stale ? html`<p class="caution">${t('plan.stale')}</p>` : nothing}
    ${ahead ? html`<p class="caution">${t('link.clock', { words: t(ahead > 0 ? 'link.ahead' : 'link.behind', { min: Math.abs(ahead) }) })}</p>` : nothing}</header>`;
};

function page() {
  const name = state.at.split('/')[0];
  const shown = name in PAGES ? name : 'join';
  const ready = shown === 'join' || shown === 'emergency' || state.day;
  const known = state.me || shown !== 'loader' && shown !== 'report' ? shown : 'join';
  return html`${link()}<nav aria-label=${t('nav')}><button class="here" aria-expanded=${String(Boolean(state.menu))} @click=${() => set({ menu: !state.menu })}>${t(`page.${known}`)}</button>
    <div class=${state.menu ? 'open' : ''}>${Object.keys(PAGES).map((one) => html`<a href=${`#${one}`} aria-current=${one === known ? 'page' : nothing} @click=${() => set({ menu: false })}>${t(`page.${one}`)}</a>`)}</div></nav>
    <main class=${known}>${ready ? PAGES[known]() : html`<p>${t('wait')}</p>`}</main><footer>${state.day ? said(state.day.caution) : nothing}</footer>`;
}

let drawn = false;
let asked = null;

/** What is asked may stand far from where the finger was: it is brought to the top, and then the page again. */
function follow() {
  if (state.ask === asked) return;
  asked = state.ask;
  // In the next frame: until then the browser holds on to what it showed.
  requestAnimationFrame(() => (asked ? document.querySelector('main .pad, main section.grid, main .refused')?.scrollIntoView() : scrollTo(0, 0)));
}

function draw() {
  drawn = false;
  const { theme, mm } = state.reader;
  document.documentElement.dataset.theme = theme;
  if (mm) document.documentElement.style.setProperty('--mm', `${mm}px`);
  document.title = `${t(`page.${state.at.split('/')[0] in PAGES ? state.at.split('/')[0] : 'join'}`)} – Underhook`;
  render(page(), root);
  follow();
}

const redraw = () => { if (!drawn) { drawn = true; queueMicrotask(draw); } };

changed(redraw);
speak(state.reader.language);
await begin();
draw();
listen();
addEventListener('online', () => { deliver(); news(); });
addEventListener('offline', () => set({ online: false }));
// Countdowns go on by themselves; the numbers are the server's and fetched anew now and then.
setInterval(redraw, 1000);
setInterval(() => { if (state.online && !document.hidden) news(); }, 30000);
addEventListener('beforeunload', (event) => { if (!isSecureContext && (!state.online || state.waiting.length)) event.preventDefault(); });

/** The page itself was there before its worker, which must know it too. */
async function keepPage() {
  await navigator.serviceWorker.register('/day/worker/worker.js', { scope: '/day/' });
  await navigator.serviceWorker.ready;
  const itself = await fetch(location.pathname, { cache: 'no-store' });
  if (itself.ok && !itself.redirected) await (await caches.open('underhook-day-1')).put(location.pathname, itself);
}

if (isSecureContext && 'serviceWorker' in navigator) keepPage().catch(() => {});
