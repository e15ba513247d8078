// The day as it was flown, beside its plan: what was tapped, load by load. All figures are the server's.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge, severity } from './marks.js';
import { codeWords, said, t } from './words.js';
import * as u from './units.js';

export function flown() {
  if (!state.plan) return html`<p>${t('plan.none')}</p>`;
  if (!state.flown) return html`<p class="waiting">${t('waiting')}</p>`;
  const day = state.flown;
  return html`<section class="flownday" aria-label=${t('panel.flown')}>
    <h2>${t('flownday.title')}</h2>
    <p class="hint">${day.taps ? t('flownday.hint', { taps: day.taps, at: u.clock(day.lastAt) }) : t('flownday.none')}</p>
    <p class="acts"><button @click=${actions.loadFlown}>${t('flownday.again')}</button>
      ${day.taps ? html`<a class="button" href=${`/api/jobs/${state.jobId}/day/taps.csv`} download>${t('flownday.taps')}</a> <a class="button" href=${`/api/jobs/${state.jobId}/day/evening.pdf`} download>${t('flownday.paper')}</a>` : nothing}</p>
    ${day.taps ? html`${sums(day)}${loads(day.loads)}${findings(day.findings)}` : nothing}</section>`;
}

function sums({ planned, flown: done }) {
  const row = (what, one, other) => html`<tr><th scope="row">${t(what)}</th><td class="num">${one}</td><td class="num">${other}</td></tr>`;
  return html`<table><thead><tr><td></td><th scope="col" class="num">${t('flownday.planned')}</th><th scope="col" class="num">${t('flownday.flown')}</th></tr></thead><tbody>
    ${row('sum.rotations', planned.lifts, done.lifts)}${row('sum.flight', u.minutes(planned.flightMinutes), u.minutes(done.flightMinutes))}
    ${row('flownday.engine', '–', u.minutes(done.engineMinutes))}${row('flownday.takeOffs', '–', done.takeOffs)}${row('flownday.landings', '–', done.landings)}
    ${done.snags ? row('flownday.snags', '–', done.snags) : nothing}</tbody></table>`;
}

/** Minutes between two moments of the server, for the eye alone. */
function late(planned, done) {
  if (!planned || !done) return nothing;
  const minutes = Math.round((u.seconds(done) - u.seconds(planned)) / 60);
  return html` <span class=${minutes > 0 ? 'late' : ''}>${minutes > 0 ? '+' : minutes < 0 ? '−' : '±'}${Math.abs(minutes)} min</span>`;
}

const beside = (planned, done) => html`${u.clock(planned)} / ${u.clock(done)}${late(planned, done)}`;

/** What was left out comes after every time; of signs, digits come late in the alphabets. */
const LAST = '9999';

const inOrder = (rows) => [...rows].sort((a, b) => (a.hookedAt ?? a.plannedHookedAt ?? LAST).localeCompare(b.hookedAt ?? b.plannedHookedAt ?? LAST));

const loads = (rows) => html`<div class="wide"><table class="loads"><caption>${t('flownday.loads', { done: rows.filter((one) => one.isDone).length, all: rows.length })}</caption>
  <thead><tr><th scope="col">${t('flownday.load')}</th><th scope="col">${t('flownday.way')}</th><th scope="col">${t('flownday.hooked')}</th><th scope="col">${t('flownday.done')}</th>
    <th scope="col" class="num">${t('flownday.mass')}</th><th scope="col">${t('flownday.state')}</th></tr></thead>
  <tbody>${inOrder(rows).map((one) => html`<tr><th scope="row"><b>${one.load}</b></th><td>${one.from} → ${one.to}</td>
    <td data-name=${t('flownday.hooked')}>${beside(one.takenOver ? null : one.plannedHookedAt, one.hookedAt)}</td>
    <td data-name=${t('flownday.done')}>${beside(one.takenOver ? null : one.plannedDoneAt, one.doneAt)}</td>
    <td class="num" data-name=${t('flownday.mass')}>${u.mass(one.listedKg)}${one.readKg == null ? nothing : html` / <b>${u.mass(one.readKg)}</b>`}</td>
    <td>${one.isDone ? html`${badge('inside', t('flownday.stands'))}${one.takenOver ? html`<br>${t('flownday.takenOver')}` : nothing}` : html`${badge(one.plannedHookedAt ? 'near' : 'outside', t('flownday.open'))} ${said(one.left)}`}
      ${one.givenUp.map((attempt) => html`<br>${attempt.readKg == null ? t('flownday.aborted') : t('flownday.abortedRead', { mass: u.mass(attempt.readKg) })}`)}</td></tr>`)}</tbody></table></div>`;

const findings = (rows) => (rows.length ? html`<h3>${t('panel.findings')}</h3><ul>${rows.map((one) => html`<li>${severity(one.severity)} <b>${one.subject}</b> ${codeWords(one.code)}: ${said(one.message)}</li>`)}</ul>` : nothing);
