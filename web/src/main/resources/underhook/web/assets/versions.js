// What changed: every revision of the job and every plan, and the differences of two of them.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { t } from './words.js';

export function versions() {
  if (!state.versions) return html`<p class="waiting">${t('waiting')}</p>`;
  const ids = state.versions.map((version) => version.revision);
  return html`<section class="versions" aria-label=${t('panel.versions')}>
    <h2>${t('versions.title')}</h2>
    <form @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      actions.compare(data.get('from'), data.get('to'));
    }}>
      <table><thead><tr><th scope="col">${t('versions.from')}</th><th scope="col">${t('versions.to')}</th><th scope="col">${t('versions.at')}</th><th scope="col">${t('versions.what')}</th></tr></thead>
      <tbody>${state.versions.map((version, i) => html`<tr>
        <td><input type="radio" name="from" value=${ids[i]} ?checked=${i === 1 || ids.length === 1} aria-label=${t('versions.pickFrom', { what: version.what })}></td>
        <td><input type="radio" name="to" value=${ids[i]} ?checked=${i === 0} aria-label=${t('versions.pickTo', { what: version.what })}></td>
        <td>${(version.at ?? '').slice(0, 16).replace('T', ' ')}</td>
        <td lang="en">${version.what} ${version.plan ? html`<code>${version.plan}</code>` : nothing} ${version.revision === state.job.head ? html`<strong>${t('versions.now')}</strong>` : nothing}</td></tr>`)}</tbody></table>
      <button>${t('versions.compare')}</button>
    </form>
    ${state.differences ? html`<h3>${t('versions.changed')}</h3><ul lang="en">${lines(state.differences).map((line) => html`<li>${line}</li>`)}</ul>` : nothing}
  </section>`;
}

const lines = (answer) => {
  const found = answer.differences;
  return found.length ? found : [t('versions.none')];
};
