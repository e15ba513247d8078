// The order of the day: a line from the first start to the last landing, every lift hanging from
// it. The chosen lift opens in place as a sheet.
import { html, svg, nothing } from '/lib/lit/lit-html.js';
import { guard } from '/lib/lit/directives/guard.js';
import { repeat } from '/lib/lit/directives/repeat.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge, shape } from './marks.js';
import { sheet } from './sheet.js';
import { faultList } from './tables.js';
import { trade } from './trade.js';
import { codeWords, said, t } from './words.js';
import * as u from './units.js';

export const liftOfStep = (index) => state.plan?.view.lifts.find((lift) => lift.step === index) ?? null;

const route = (step) => (step.kind === 'rotation'
  ? [step.from, ...step.drops.map((drop) => drop.place)].filter((place, i, all) => place !== all[i - 1]).join(' → ')
  : step.from === step.to ? step.from : `${step.from} → ${step.to}`);

/** Letters of the longest name and way of a lift: it may take two lines. */
const longestName = () => Math.max(0, ...state.plan.steps.filter((step) => step.kind === 'rotation').map((step) => `${step.loads.join(' + ')} ${route(step)}`.length));

/** Fuel at the hook as a bar, with a notch at the most fuel this lift allows. */
function fuelBar(step, lift) {
  const full = state.plan.view.tankKg;
  if (!full) return nothing;
  const at = (kg) => 2 + 76 * Math.min(1, kg / full);
  return html`<svg class="fuel" viewBox="0 0 80 14" aria-hidden="true">
    <path class="tube" d="M2 4h76v6H2Z" />
    <path class="fill" d="M2 4H${at(step.fuelAtHookKg)}v6H2Z" />
    ${svg`<path class="notch" d="M${at(lift.mostReadKg)} 0v14" />`}
  </svg>`;
}

/** A lift stands at its hook-up, with its fuel, as on the pilot's card. */
function liftRow(step, lift) {
  const open = state.lift === lift.number;
  return html`<li class="lift ${open ? 'open' : ''}" id="lift-${lift.number}">
    <button class="row" aria-expanded=${open} data-lift=${lift.number}
        @click=${() => actions.choose(open ? null : lift.number)}>
      <time>${u.clock(step.hookedAt)}</time>
      <span class="rope" aria-hidden="true"></span>
      ${shape(state.plan.loadsById.get(lift.loads[0])?.kind)}
      <span class="what"><b>${step.loads.join(' + ')}</b> <span>${route(step)}</span></span>
      <span class="mass">${u.mass(step.massOnHookKg, 'up')}</span>
      <span class="fuelcell">${fuelBar(step, lift)}<span>${t('spine.fuel', { at: u.mass(step.fuelAtHookKg, 'down'), most: u.mass(lift.mostReadKg, 'down') })}</span></span>
      ${badge(lift.status)}
      <span class="first" title=${lift.words}>${first(lift.words)}</span>
    </button>
    ${open ? sheet(step, lift) : nothing}
  </li>`;
}

/** The limit that is nearest, as "CODE at PLACE, N % left", or a sentence. */
function first(words) {
  const [, code, place, left] = /^([A-Z][A-Z_]+)(?: at (\S+?))?, (-?\d+) % left$/.exec(words) ?? [];
  return code ? `${codeWords(code)}${place ? `, ${place}` : ''}: ${t('spine.left', { left })}` : said(words);
}

const otherRow = (step, index) => html`<li class="step ${step.kind}" id="step-${index}">
  <div class="row">
    <time>${u.clock(step.startAt)}</time>
    <span class="rope ${step.lineLengthM > 0 ? '' : 'off'}" aria-hidden="true"></span>
    ${shape(step.kind)}
    <span class="what">${t(`step.${step.kind}`)} <span>${route(step)}</span></span>
    <span class="detail">${detail(step)}</span>
  </div>
</li>`;

function detail(step) {
  const lasts = u.minutes((u.seconds(step.endAt) - u.seconds(step.startAt)) / 60);
  if (step.kind === 'refuel') return `${lasts}, ${u.mass(step.fuelStartKg)} → ${u.mass(step.fuelEndKg)}`;
  if (step.kind === 'lineChange') return `${lasts}, ${step.lineLengthM > 0 ? t('line.fitted', { length: u.length(step.lineLengthM) }) : t('line.off')}`;
  return lasts;
}

/** What keeps the job from having a plan. */
const withoutPlan = () => html`<section class="spine" aria-label=${t('spine.title')}><p>${t('plan.none')}</p>${state.job.faults?.length ? faultList() : nothing}</section>`;

export function spine() {
  if (!state.plan) return state.job ? withoutPlan() : nothing;
  const steps = state.plan.steps.map((step, index) => ({ step, index }));
  return html`<section class="spine" style=${`--name: ${Math.ceil(longestName() / 2)}ch`} aria-label=${t('spine.title')}>
    <h2 class="sr">${t('spine.title')}</h2>${trade()}<p class="hint">${t('spine.hint')}</p>
    <ol @keydown=${walk}>${repeat(steps, ({ index }) => index, ({ step, index }) => {
      const lift = liftOfStep(index);
      // A choice changes two rows: the others are not worked out again.
      return state.lift === lift?.number ? liftRow(step, lift) : guard([step, state.reader, state.job?.magneticVariationDeg], () => (lift ? liftRow(step, lift) : otherRow(step, index)));
    })}</ol>
    ${leftOut()}
  </section>`;
}

const leftOut = () => (state.plan.leftOut.length === 0 ? nothing : html`
  <h2>${t('leftOut.title', { count: state.plan.leftOut.length })}</h2>
  <ul class="leftout">${state.plan.leftOut.map((load) => html`<li>
    ${badge('outside')} <b>${load.load}</b> ${said(load.message)}</li>`)}</ul>`);

/** Arrow keys walk from lift to lift; with Alt held they ask what moving the lift would cost. */
function walk(event) {
  const row = event.target.closest?.('button.row');
  const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!row || !by) return;
  event.preventDefault();
  if (event.altKey) {
    actions.askMove(Number(row.dataset.lift), by);
    return;
  }
  const rows = [...event.currentTarget.querySelectorAll('button.row')];
  rows[rows.indexOf(row) + by]?.focus();
}
