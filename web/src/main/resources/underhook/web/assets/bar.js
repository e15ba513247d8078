// The band along the top: which job, what stands open, planning with progress, undo.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge } from './marks.js';
import { chance } from './trade.js';
import { plainly, said, t } from './words.js';
import * as u from './units.js';

/** Half a day: no clock is off by so much that is not meant to be. */
const REHEARSAL_MS = 12 * 3600 * 1000;

export const bar = (panels) => html`<header>
  <div class="job">
    <h1>${state.job?.name ?? 'Underhook'}</h1>${state.job ? rehearsal() : nothing}
    ${state.job ? html`<p>${state.job.date ? html`${state.job.date} · ${t('zone', { zone: zone() })} · ` : nothing}${kept()}${state.plan ? html` · <a href=${`/day/${state.jobId}`} target="_blank" rel="noopener">${t('day.link')}</a>` : nothing}</p>` : nothing}
  </div>
  ${state.job ? html`<div class="doing">
    ${state.run ? progress() : html`<button class="main" @click=${openPlan}>${t('plan.open')}</button>`}
    <button ?disabled=${!state.job.canUndo} title=${plainly(state.job.undoWhat)} @click=${actions.undo}>${t('undo')}</button>
    <button ?disabled=${!state.job.canRedo} title=${plainly(state.job.redoWhat)} @click=${actions.redo}>${t('redo')}</button>
  </div>` : nothing}
  <nav aria-label=${t('nav')}>${panels.filter((panel) => state.job || panel === 'files' || panel === 'reader').map((panel) => html`
    <button aria-current=${state.panel === panel ? 'page' : 'false'} @click=${() => actions.show(panel)}>${t(`panel.${panel}`)}${count(panel)}</button>`)}</nav>
  ${summary()}
</header>`;

/** A job with faults is not planned: said on every panel, and one press away. */
function faults() {
  const count = state.job.faults?.length ?? 0;
  return count ? html`<button class="fault" @click=${() => actions.show('tables')}>${badge('outside', t('faults.title', { count }))} ${t('faults.first')}</button>` : nothing;
}

/** On the day of a clock change with both offsets. */
const zone = () => [state.job.zone, ...(state.job.offsets?.length > 1 ? [state.job.offsets.join(t('zone.then'))] : [])].join(', ');

/** A server whose clock is set to another day: what is printed now carries that day's time. */
function rehearsal() {
  const { now } = state.session ?? {};
  return now && Math.abs(Date.parse(now) - state.session.askedAt) > REHEARSAL_MS ? html`<p><strong class="stale">${t('rehearsal', { time: u.stamp(now) })}</strong></p>` : nothing;
}

const kept = () => (state.saving > 0 ? t('saving') : t('saved'));

function count(panel) {
  const n = panel === 'findings' ? state.plan?.view.openFindings?.length : panel === 'tables' ? state.job?.faults?.length : 0;
  return n ? html` <span class="count">${n}</span>` : nothing;
}

function summary() {
  const s = state.plan?.summary;
  if (!s) return state.job ? html`<p class="summary">${t('plan.none')} ${faults()}</p>` : nothing;
  const pair = (name, value, kind = '') => html`<span class=${kind}>${name} <b>${value}</b></span>`;
  const left = state.plan.leftOut.length;
  return html`<p class="summary">
    ${pair(t('sum.rotations'), s.rotations)} ${pair(t('sum.flight'), `${Math.ceil(s.flightMinutes)} min`)}
    ${pair(t('sum.refuels'), s.refuels, 'minor')} ${pair(t('sum.lineChanges'), s.lineChanges, 'minor')} ${pair(t('sum.finish'), u.clock(s.finishAt))}
    ${left ? html`<span>${badge('outside', t('sum.leftOut', { count: left }))}</span>` : pair(t('sum.allIn'), '')}
    ${state.plan.odds ? pair(t('sum.chance'), chance(state.plan.odds.allInTime)) : nothing}
    ${s.price ? pair(t('sum.price'), u.money(s.price.totalCents, s.price.currency)) : nothing}
    ${s.cutShort ? html`<strong class="stale">${t('plan.cutShort')}</strong>` : nothing}
    ${state.job?.plan?.stale ? html`<strong class="stale">${t('plan.stale')}</strong>` : nothing}
  </p>`;
}

const progress = () => html`<div class="progress">
  <progress max="1" .value=${state.run.fraction ?? 0} aria-label=${t('plan.progress')}></progress>
  <span>${said(state.run.doing)}</span> ${state.run.best ? html`<span>${t('plan.best', { best: typeof state.run.best === 'object' ? `${Math.ceil(state.run.best.flightMinutes)} min` : state.run.best })}</span>` : nothing}
  <button @click=${actions.stopPlan}>${t('plan.stop')}</button></div>`;

function openPlan() {
  actions.open(() => html`<h2>${t('plan.title')}</h2>
    <form @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      actions.close();
      actions.startPlan(Number(data.get('seconds')), Number(data.get('seed')));
    }}>
      <label>${t('plan.seconds')} <input name="seconds" type="number" min="1" max="3600" value="120" required></label>
      <label>${t('plan.seed')} <input name="seed" type="number" min="1" max="999999" value=${state.plan?.seed ?? 1} required></label>
      <p class="hint">${t('plan.hint')}</p>
      <button class="main">${t('plan.go')}</button>
    </form>`);
}
