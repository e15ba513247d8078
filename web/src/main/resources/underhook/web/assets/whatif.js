// Asking before changing: what a move, another line, machine, laydown, hour or fuel would cost,
// side by side with the plan of record. Nothing counts until it is accepted.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { severity } from './marks.js';
import { chance } from './trade.js';
import { said, t } from './words.js';
import * as u from './units.js';

const lifts = () => state.plan.view.lifts;

/** Another day of the front, asked for by the rate that finds it. */
actions.openRate = (day) => {
  actions.ask({ rate: { lift: lifts()[0]?.number ?? 0, value: String(day.flyingRatePercent) } });
  actions.open(() => html`<h2>${t('rate.title')}</h2><p>${t('rate.words', { flight: u.minutes(day.flightMinutes), finish: u.clock(day.finishAt), percent: day.flyingRatePercent })}</p>${answer()}`);
};

/** Loads left for another day until the rest is in time on so many of 100 replayed days. */
actions.openSurer = (days) => {
  actions.ask({ sure: { lift: lifts()[0]?.number ?? 0, value: String(days) } });
  actions.open(() => html`<h2>${t('sure.title')}</h2><p>${t('sure.words', { days })}</p>${answer()}`);
};

actions.openMove = (lift, after = null) => {
  actions.ask({ move: { lift, after: after ?? Math.max(0, lift - 2) } });
  actions.open(() => moveForm(lift));
};

actions.askMove = (lift, by) => actions.openMove(lift, Math.max(0, Math.min(lifts().length, by < 0 ? lift - 2 : lift + 1)));

function moveForm(lift) {
  const after = state.question?.move?.after;
  const one = lifts().find((each) => each.number === lift);
  const to = (value) => actions.ask({ move: { lift, after: value } });
  return html`<h2>${t('move.title', { lift, loads: one.loads.join(' + ') })}</h2>
    <p class="acts"><button @click=${() => to(stepFrom(lift, after, -1))}>${t('move.earlier')}</button>
      <label>${t('move.after')} <select @change=${(event) => to(Number(event.target.value))}>
        <option value="0" ?selected=${after === 0}>${t('move.first')}</option>
        ${lifts().filter((each) => each.number !== lift).map((each) => html`<option value=${each.number} ?selected=${after === each.number}>
          ${each.number}: ${u.clock(state.plan.steps[each.step].hookedAt)} ${each.loads.join(' + ')}</option>`)}</select></label>
      <button @click=${() => to(stepFrom(lift, after, 1))}>${t('move.later')}</button></p>
    <p class="hint">${t('move.tried')}</p>
    ${answer()}`;
}

// The lift itself is no place to stand after.
function stepFrom(lift, after, by) {
  let next = (after ?? lift) + by;
  if (next === lift) next += by;
  return Math.max(0, Math.min(lifts().length, next));
}

const CHOICES = { line: 'lines', machine: 'machines', laydown: 'laydowns' };
const EXAMPLES = { hour: '07:00', fuel: '250' };

actions.openWhatIf = (lift) => {
  actions.set({ question: null, answer: null, asks: 'line' });
  actions.open(() => html`<h2>${t('whatif.title', { lift })}</h2>
    <form @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      const what = data.get('what'), value = data.get('value').trim();
      actions.ask({ [what]: { lift, value: what === 'fuel' ? Number(value) : value } });
    }}>
      <label>${t('whatif.what')} <select name="what" @change=${(event) => actions.set({ asks: event.target.value })}>${['line', 'machine', 'laydown', 'hour', 'fuel'].map((what) => html`
        <option value=${what} ?selected=${what === state.asks}>${t(`whatif.${what}`)}</option>`)}</select></label>
      <label>${t('whatif.value')} ${valueField(state.asks)}</label>
      <p class="hint">${t(`whatif.hint.${state.asks}`)}</p>
      <button>${t('whatif.ask')}</button>
    </form>${answer()}`);
};

const valueField = (what) => (what in CHOICES
  ? html`<select name="value" required>${(state.plan.view.choices?.[CHOICES[what]] ?? []).map((one) => html`<option value=${one}>${one}</option>`)}</select>`
  : html`<input name="value" required autocomplete="off" placeholder=${EXAMPLES[what]} type=${what === 'hour' ? 'time' : 'number'}>`);

/** What is being done and how far it is; the best so far is the answer when it is stopped. */
const working = () => html`<div class="progress" role="status"><span class="waiting">${t(state.accepting ? 'whatif.accepting' : 'whatif.working')}</span>
  <progress max="1" .value=${state.asking?.fraction ?? 0} aria-label=${t('plan.progress')}></progress> <span>${said(state.asking?.doing ?? '')}</span>
  <button @click=${actions.stopAsking}>${t('plan.stop')}</button></div>`;

const signed = (value, unit, digits = 1) => (value == null ? '–' : `${value > 0 ? '+' : ''}${value.toFixed(digits)} ${unit}`);

function answer() {
  const found = state.answer;
  if (!state.question) return nothing;
  if (!found || state.accepting) return working();
  if (!found.possible) return html`<p class="refusal" role="status">${t('whatif.impossible')} ${said(found.why ?? '')}</p>`;
  const record = state.plan.summary;
  return html`<div role="status" class="answer">
    <table><thead><tr><td></td><th scope="col">${t('whatif.record')}</th><th scope="col">${t('whatif.change')}</th></tr></thead><tbody>
      <tr><th scope="row">${t('sum.flight')}</th><td>${u.minutes(record.flightMinutes)}</td><td>${signed(found.minutesDelta, 'min')}</td></tr>
      <tr><th scope="row">${t('sum.finish')}</th><td>${u.clock(record.finishAt)}</td><td>${signed(found.finishDelta, 'min')}</td></tr>
      <tr><th scope="row">${t('lane.fuel')}</th><td></td><td>${signed(found.fuelDelta, 'kg', 0)}</td></tr>
      ${found.inTime ? html`<tr><th scope="row">${t('whatif.inTime')}</th><td>${chance(state.plan.odds?.allInTime)}</td><td>${chance(found.inTime)}</td></tr>` : nothing}</tbody></table>
    ${found.cutShort ? html`<p class="refusal">${t('whatif.cutShort')}</p>` : nothing}
    ${list(t('whatif.leftOut'), found.leftOutNew)}${list(t('whatif.new'), found.findingsNew)}${list(t('whatif.gone'), found.findingsGone)}
    ${found.why ? html`<p>${said(found.why)}</p>` : nothing}
    <p class="acts"><button class="main" @click=${actions.accept}>${t('whatif.accept')}</button></p></div>`;
}

const list = (title, rows) => (rows?.length ? html`<h3>${title}</h3><ul>${rows.map((row) => html`<li>${
  typeof row === 'string' ? said(row) : html`${row.severity ? severity(row.severity) : nothing} <b>${row.subject ?? row.load}</b> ${said(row.message)}`}</li>`)}</ul>` : nothing);
