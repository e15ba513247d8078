// How a number came about: inputs, table point or formula, source, and what eats the margin.
import { html, nothing } from '/lib/lit/lit-html.js';
import { actions } from './actions.js';
import { badge } from './marks.js';
import { codeWords, said, sourceWords, t } from './words.js';
import * as u from './units.js';

const line = (name, value) => (value == null || value === '' ? nothing
  : html`<dt>${name}</dt><dd>${said(value)}</dd>`);

/** A file by what it is for; anything else as the server says it. */
const from = (source) => {
  const words = sourceWords(source);
  return words === source ? said(source) : words;
};

export function how(row, lift) {
  const steps = row.how ?? {};
  return html`<h2>${t('how.title', { code: codeWords(row.code) })}</h2>
    <p>${badge(row.state)} ${t('how.value', { value: u.withUnit(row.value, row.unit, 'up'), limit: u.withUnit(row.limit, row.unit, 'down') })}${row.marginPercent == null ? nothing : ', '}${row.marginPercent == null ? nothing : t('how.margin', { percent: row.marginPercent })}</p>
    ${steps.inputs?.length ? html`<table><thead><tr><th scope="col">${t('how.input')}</th><th scope="col">${t('limits.value')}</th>
      <th scope="col">${t('how.source')}</th></tr></thead><tbody>${steps.inputs.map((input) => html`<tr>
      <th scope="row">${said(input.name)}</th><td>${u.withUnit(input.value, input.unit)}</td><td>${from(input.source)}</td></tr>`)}</tbody></table>` : nothing}
    <dl class="pairs">${line(t('how.formula'), steps.formula)}${line(t('how.tablePoint'), steps.tablePoint)}
      ${steps.source ?? row.source ? html`<dt>${t('how.source')}</dt><dd>${from(steps.source ?? row.source)}</dd>` : nothing}</dl>
    ${steps.eats?.length ? html`<h3>${t('how.eats')}</h3><ul>${steps.eats.map((part) => html`<li>${
      typeof part === 'string' ? said(part) : html`${said(part.name)}: ${u.withUnit(part.value, part.unit)}`}</li>`)}</ul>` : nothing}
    ${row.mayOverride ? html`<p class="acts"><button @click=${() => actions.openOverride(row.code, row.subject ?? lift?.loads[0])}>${t('override.open')}</button></p>`
      : html`<p class="hint">${t('override.fixed')}</p>`}`;
}
