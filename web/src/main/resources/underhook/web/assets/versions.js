// What changed: every revision of the job and every plan, who made it and when, whether it is still what
// was sealed, and the differences of two of them.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge } from './marks.js';
import { plainly, said, t } from './words.js';
import * as u from './units.js';

export function versions() {
  if (!state.versions) return html`<p class="waiting">${t('waiting')}</p>`;
  const only = state.versions.length === 1;
  return html`<section class="versions" aria-label=${t('panel.versions')}>
    <h2>${t('versions.title')}</h2>
    ${seal(state.versions[0]?.altered)}
    <form @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      actions.compare(data.get('from'), data.get('to'));
    }}>
      <div class="wide"><table><thead><tr>${only ? nothing : html`<th scope="col">${t('versions.from')}</th><th scope="col">${t('versions.to')}</th>`}
        <th scope="col">${t('versions.at')}</th><th scope="col">${t('versions.who')}</th><th scope="col">${t('versions.what')}</th><th scope="col">${t('versions.plan')}</th></tr></thead>
      <tbody>${state.versions.map((version, i) => html`<tr>${only ? nothing : picks(version, i)}
        <td>${u.stamp(version.at)}</td><td>${version.who || t('versions.nobody')}</td>
        <td>${said(version.what)}${version.revision === state.job.head ? html` <strong>${t('versions.now')}</strong>` : nothing}</td>
        <td>${version.plan ? html`<code>${version.plan}</code>` : '–'}</td></tr>`)}</tbody></table></div>
      ${only ? html`<p class="hint">${t('versions.only')}</p>` : html`<p class="acts"><button class="main">${t('versions.compare')}</button></p>`}
    </form>
    ${state.differences ? html`<h3>${t('versions.changed')}</h3><ul>${state.differences.differences.length ? state.differences.differences.map((line) => html`<li>${said(line)}</li>`) : html`<li>${t('versions.none')}</li>`}</ul>` : nothing}
  </section>`;
}

const picks = (version, i) => html`
  <td><input type="radio" name="from" value=${version.revision} ?checked=${i === 1} aria-label=${t('versions.pickFrom', { what: plainly(version.what) })}></td>
  <td><input type="radio" name="to" value=${version.revision} ?checked=${i === 0} aria-label=${t('versions.pickTo', { what: plainly(version.what) })}></td>`;

// Every entry is sealed with the one before, so what was altered later is named by the first that is broken.
const seal = (broken) => (broken
  ? html`<p role="alert">${badge('outside', t('versions.altered'))} <span lang="en">${broken}</span> ${t('versions.alteredWords')}</p>`
  : html`<p>${badge('inside', t('versions.sealed'))} ${t('versions.sealedWords')}</p>`);
