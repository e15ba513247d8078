// What is open, ordered by what can hurt; the order is the server's. Many of one kind stand together,
// so that one of another kind is not overlooked among them.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge, severity } from './marks.js';
import { how } from './how.js';
import { codeWords, said, sourceWords, t } from './words.js';
import * as u from './units.js';

/** So many of one kind are shown before the rest is folded away. */
const SHOWN = 2;

export function findings() {
  if (!state.plan) return html`<p>${t('plan.none')}</p>`;
  const open = state.plan.view.openFindings ?? state.plan.findings;
  const kept = open.filter((finding) => !state.onlySeverity || finding.severity === state.onlySeverity);
  return html`<section class="findings" aria-label=${t('panel.findings')}>
    <h2>${t('findings.title', { count: open.length })}</h2>
    <p class="hint">${t('findings.hint')}</p>
    <p class="filter" role="group" aria-label=${t('findings.only')}>${['', 'STOP', 'CAUTION', 'NOTE'].filter((word) => !word || open.some((f) => f.severity === word)).map((word) => html`
      <button aria-pressed=${(state.onlySeverity ?? '') === word} @click=${() => only(word)}>${t(word ? `severity.${word}` : 'all')}
      <span class="count">${word ? open.filter((f) => f.severity === word).length : open.length}</span></button>`)}</p>
    <ol>${kinds(kept).map((kind) => html`${kind.slice(0, SHOWN).map(one)}${rest(kind.slice(SHOWN))}`)}</ol></section>`;
}

/** In the order of the first of each kind. */
function kinds(all) {
  const found = new Map();
  for (const finding of all) {
    const kind = `${finding.severity} ${finding.code}`;
    found.set(kind, [...(found.get(kind) ?? []), finding]);
  }
  return [...found.values()];
}

const rest = (more) => (more.length === 0 ? nothing : more.length === 1 ? one(more[0]) : html`<li><details>
  <summary>${severity(more[0].severity)} <span>${t('findings.more', { count: more.length, what: codeWords(more[0].code) })}: ${more.map((finding) => finding.subject).join(', ')}</span></summary>
  <ol>${more.map(one)}</ol></details></li>`);

const only = (word) => actions.set({ onlySeverity: word });

function one(finding) {
  const lift = state.plan.view.lifts.find((l) => l.loads.includes(finding.subject));
  return html`<li class="one ${finding.severity}"><div>
    ${severity(finding.severity)} <b>${finding.subject}</b> ${codeWords(finding.code)} <code>${finding.code}</code>
    ${finding.overridden ? html`${badge('near', t('override.done'))} <span lang="en">${finding.overridden.reason ?? finding.overridden}</span>` : nothing}
    <p>${said(finding.message)}</p>
    ${numbers(finding)}</div>
    <p class="acts">
      ${lift ? html`<button @click=${() => { actions.show('day'); actions.choose(lift.number); }}>${t('findings.show', { lift: lift.number })}</button>` : nothing}
      ${has(finding.value) ? html`<button @click=${() => actions.open(() => how({ ...finding, state: stateOf(finding) }, lift))}>${t('how.open')}</button>` : nothing}
      ${!finding.mayOverride ? nothing : html`<button @click=${() => actions.openOverride(finding.code, finding.subject)}>${t('override.open')}</button>`}
    </p></li>`;
}

const has = (value) => value != null && value !== '';

const numbers = (finding) => html`<p class="numbers">${has(finding.value) ? html`<span>${t('limits.value')} <b>${u.withUnit(finding.value, unitOf(finding))}</b></span>` : nothing}
  ${has(finding.limit) ? html`<span>${t('limits.limit')} <b>${u.withUnit(finding.limit, finding.unit)}</b></span>` : nothing}
  ${finding.source ? html`<span>${t('findings.from', { source: sourceWords(finding.source) })}</span>` : nothing}</p>`;


const stateOf = (finding) => ({ STOP: 'outside', CAUTION: 'near', NOTE: 'inside' })[finding.severity];

// Some values already carry their unit as text.
const unitOf = (finding) => (/^-?[\d.]+$/.test(String(finding.value)) ? finding.unit : '');
