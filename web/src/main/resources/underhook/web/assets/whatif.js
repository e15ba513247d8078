// Asking before changing: what a move, another line, machine, laydown, hour or fuel would cost,
// side by side with the plan of record. Nothing counts until it is accepted.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { severity } from './marks.js';
import { t } from './words.js';
import * as u from './units.js';

const lifts = () => state.plan.view.lifts;

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
          ${each.number}: ${u.clock(state.plan.steps[each.step].startAt)} ${each.loads.join(' + ')}</option>`)}</select></label>
      <button @click=${() => to(stepFrom(lift, after, 1))}>${t('move.later')}</button></p>
    ${answer()}`;
}

// The lift itself is no place to stand after.
function stepFrom(lift, after, by) {
  let next = (after ?? lift) + by;
  if (next === lift) next += by;
  return Math.max(0, Math.min(lifts().length, next));
}

const ASKS = {
  line: () => state.plan.view.choices?.lines ?? [],
  machine: () => state.plan.view.choices?.machines ?? [],
  laydown: () => state.plan.view.choices?.laydowns ?? [],
};

actions.openWhatIf = (lift) => {
  actions.set({ question: null, answer: null });
  actions.open(() => html`<h2>${t('whatif.title', { lift })}</h2>
    <form @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      const what = data.get('what'), value = data.get('value').trim();
      actions.ask({ [what]: { lift, value: what === 'fuel' ? Number(value) : value } });
    }}>
      <label>${t('whatif.what')} <select name="what">${['line', 'machine', 'laydown', 'hour', 'fuel'].map((what) => html`<option value=${what}>${t(`whatif.${what}`)}</option>`)}</select></label>
      <label>${t('whatif.value')} <input name="value" required list="choices" autocomplete="off"></label>
      <datalist id="choices">${Object.values(ASKS).flatMap((list) => list()).map((value) => html`<option value=${value.id ?? value}></option>`)}</datalist>
      <button>${t('whatif.ask')}</button>
    </form>${answer()}`);
};

const signed = (value, unit, digits = 1) => (value == null ? '–' : `${value > 0 ? '+' : ''}${value.toFixed(digits)} ${unit}`);

function answer() {
  const found = state.answer;
  if (!state.question) return nothing;
  if (!found) return html`<p class="waiting" role="status">${t('whatif.working')}</p>`;
  if (!found.possible) return html`<p class="refusal" role="status">${t('whatif.impossible')} <span lang="en">${found.why ?? ''}</span></p>`;
  const record = state.plan.summary;
  return html`<div role="status" class="answer">
    <table><thead><tr><th></th><th scope="col">${t('whatif.record')}</th><th scope="col">${t('whatif.change')}</th></tr></thead><tbody>
      <tr><th scope="row">${t('sum.flight')}</th><td>${u.minutes(record.flightMinutes)}</td><td>${signed(found.minutesDelta, 'min')}</td></tr>
      <tr><th scope="row">${t('sum.finish')}</th><td>${u.clock(record.finishAt)}</td><td>${signed(found.finishDelta, 'min')}</td></tr>
      <tr><th scope="row">${t('lane.fuel')}</th><td></td><td>${signed(found.fuelDelta, 'kg', 0)}</td></tr></tbody></table>
    ${list(t('whatif.new'), found.findingsNew)}${list(t('whatif.gone'), found.findingsGone)}
    ${found.why ? html`<p lang="en">${found.why}</p>` : nothing}
    <p class="acts"><button class="main" @click=${actions.accept}>${t('whatif.accept')}</button></p></div>`;
}

const list = (title, rows) => (rows?.length ? html`<h3>${title}</h3><ul lang="en">${rows.map((row) => html`<li>${
  typeof row === 'string' ? row : html`${severity(row.severity)} <b>${row.subject}</b> ${row.message}`}</li>`)}</ul>` : nothing);
