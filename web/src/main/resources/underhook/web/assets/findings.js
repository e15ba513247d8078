// What is open, ordered by what can hurt; the order is the server's.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge, severity } from './marks.js';
import { how } from './how.js';
import { codeWords, said, t } from './words.js';
import * as u from './units.js';

export function findings() {
  if (!state.plan) return html`<p>${t('plan.none')}</p>`;
  const open = state.plan.view.openFindings ?? state.plan.findings;
  const kept = open.filter((finding) => !state.onlySeverity || finding.severity === state.onlySeverity);
  return html`<section class="findings" aria-label=${t('panel.findings')}>
    <h2>${t('findings.title', { count: open.length })}</h2>
    <p class="hint">${t('findings.hint')}</p>
    <p class="filter" role="group" aria-label=${t('findings.only')}>${['', 'STOP', 'CAUTION', 'NOTE'].map((word) => html`
      <button aria-pressed=${(state.onlySeverity ?? '') === word} @click=${() => only(word)}>${t(word ? `severity.${word}` : 'all')}
      <span class="count">${word ? open.filter((f) => f.severity === word).length : open.length}</span></button>`)}</p>
    <ol>${kept.map(one)}</ol></section>`;
}

const only = (word) => actions.set({ onlySeverity: word });

function one(finding) {
  const lift = state.plan.view.lifts.find((l) => l.loads.includes(finding.subject));
  return html`<li class=${finding.severity}>
    ${severity(finding.severity)} <b>${finding.subject}</b> ${codeWords(finding.code)} <code>${finding.code}</code>
    ${finding.overridden ? html`${badge('near', t('override.done'))} <span lang="en">${finding.overridden.reason ?? finding.overridden}</span>` : nothing}
    <p>${said(finding.message)}</p>
    <p class="numbers">${finding.value == null ? nothing : html`<span>${t('limits.value')} <b>${u.withUnit(finding.value, unitOf(finding))}</b></span>`}
      ${finding.limit == null ? nothing : html`<span>${t('limits.limit')} <b>${u.withUnit(finding.limit, finding.unit)}</b></span>`}
      ${finding.source ? html`<span lang="en">${finding.source}</span>` : nothing}</p>
    <p class="acts">
      ${lift ? html`<button @click=${() => { actions.show('day'); actions.choose(lift.number); }}>${t('findings.show', { lift: lift.number })}</button>` : nothing}
      <button @click=${() => actions.open(() => how({ ...finding, state: stateOf(finding) }, lift))}>${t('how.open')}</button>
      ${!finding.mayOverride ? nothing : html`<button @click=${() => actions.openOverride(finding.code, finding.subject)}>${t('override.open')}</button>`}
    </p></li>`;
}

const stateOf = (finding) => ({ STOP: 'outside', CAUTION: 'near', NOTE: 'inside' })[finding.severity];

// Some values already carry their unit as text.
const unitOf = (finding) => (typeof finding.value === 'number' ? finding.unit : '');
