// The planning desk: puts the views together and draws them whenever the state changes.
import { html, nothing, render } from '/lib/lit/lit-html.js';
import { state, listen, set } from './state.js';
import { actions } from './actions.js';
import { said, speak, t } from './words.js';
import { bar } from './bar.js';
import { spine } from './spine.js';
import { findings } from './findings.js';
import { lanes } from './lanes.js';
import { tables } from './tables.js';
import { files } from './files.js';
import { ahead } from './ahead.js';
import { flown } from './flown.js';
import { versions } from './versions.js';
import { papers } from './papers.js';
import './whatif.js';
import './ways.js';
import './override.js';
import { readerSettings } from './reader.js';
import { mapKey } from './mapkey.js';
import { editPanel } from './mapedit.js';

const root = document.getElementById('desk');

const look = () => html`<section class="around" aria-label=${t('look.title')}>
  ${state.lift ? html`<h2>${t('sheet.title', { lift: state.lift, loads: '' }).replace(/, $/, '')}</h2><label class="slider">${t('section.fly')}
    <input type="range" min="0" max="1" step="0.005" .value=${String(state.at)} @input=${(event) => actions.fly(Number(event.target.value))}></label>` : html`<p>${t('look.choose')}</p>`}
  <div id="look"></div></section>`;

const PANELS = { day: spine, findings, lanes, look, tables, files, versions, ahead, papers, flown, reader: readerSettings };

const page = () => html`
  <a class="skip" href="#main">${t('skip')}</a>
  ${bar(Object.keys(PANELS))}
  <main id="main" class=${`panel-${state.panel}`} tabindex="-1">
    <div class="left">${(PANELS[state.panel] ?? spine)()}</div>
    <div class="right" ?hidden=${!state.job || !MAPPED.has(state.panel)}>
      <div id="map" class=${state.edit ? 'editing' : ''} tabindex="0" role="application" aria-label=${t(state.edit ? 'edit.words' : 'map.words')}></div>
      ${state.map?.stale ? html`<p class="stale">${t('map.stale')}</p>` : nothing}
      <div class="beside">${mapKey()}${editPanel()}</div>
      <p class="attribution" lang="en">${[...(state.map?.attributions ?? []), state.map?.licence].filter(Boolean).join(' · ')}</p>
    </div>
  </main>
  <footer>${said(state.session?.caution ?? state.plan?.caution ?? '')}</footer>
  <div role="status" aria-live="polite" class=${`says ${state.note?.kind ?? ''}`} ?hidden=${!state.note}>
    <span>${state.note?.isServers ? said(state.note.words) : state.note?.words}</span> <button @click=${() => actions.say('')} ?hidden=${!state.note?.words}>${t('close')}</button></div>
  ${dialog()}`;

const MAPPED = new Set(['day', 'findings', 'lanes']);

// It hears that it was closed a moment later: by then another question may have opened it.
const closed = (event) => { if (!event.target.open) actions.close(); };

const dialog = () => html`<dialog aria-label=${t('dialog')} @close=${closed} @cancel=${actions.close}>
  ${state.dialog ? html`<div class="inner">${state.dialog()}<p class="acts"><button class="shut" @click=${actions.close}>${t('close')}</button></p></div>` : nothing}</dialog>`;

let drawn = false, mapStarted = false, lookStarted = null, shownPanel = null;

function draw() {
  drawn = false;
  const { theme, mm } = state.reader;
  document.documentElement.dataset.theme = theme;
  if (mm) document.documentElement.style.setProperty('--mm', `${mm}px`);
  document.title = state.job ? `${state.job.name} – Underhook` : 'Underhook';
  render(page(), root);
  // Charts are drawn at the width they have; when that has changed, once more.
  const figureWidth = root.querySelector('.section-figure')?.clientWidth;
  if (figureWidth && figureWidth !== state.figureWidth) set({ figureWidth });
  const box = root.querySelector('dialog');
  if (state.dialog && !box.open) box.showModal();
  else if (!state.dialog && box.open) box.close();
  if (state.job && !mapStarted) startMap();
  if (state.panel === 'look' && state.lift) startLook();
  // The tabs are there once the job is.
  if (state.job && state.panel !== shownPanel) {
    shownPanel = state.panel;
    requestAnimationFrame(() => document.querySelector('header nav [aria-current=page]')?.scrollIntoView({ block: 'nearest', inline: 'center' }));
  }
  if (state.plan && !performance.getEntriesByName('useful').length) performance.mark('useful');
}

async function startMap() {
  mapStarted = true;
  await library();
  (await import('./map.js')).startMap(document.getElementById('map'));
}

/** The map's library is large: the order of the day does not wait for it. */
const library = () => new Promise((done) => {
  document.head.append(Object.assign(document.createElement('script'), { src: '/lib/ol/dist/ol.js', onload: done }));
});

async function startLook() {
  if (lookStarted === document.getElementById('look')) return;
  lookStarted = document.getElementById('look');
  (await import('./look.js')).startLook(lookStarted);
}

// One drawing for all changes of one turn, before the next frame.
listen(() => {
  if (!drawn) {
    drawn = true;
    queueMicrotask(draw);
  }
});

document.addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z' || event.target.closest('input, textarea')) return;
  event.preventDefault();
  (event.shiftKey ? actions.redo : actions.undo)();
});

addEventListener('dragover', (event) => {
  if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
});
addEventListener('drop', (event) => {
  if (!event.dataTransfer?.files.length) return;
  event.preventDefault();
  if (state.jobId) actions.dropFiles([...event.dataTransfer.files]);
});
addEventListener('resize', () => set({}));
addEventListener('hashchange', () => location.reload());

await speak(state.reader.language);
draw();
actions.start();
