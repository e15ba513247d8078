// Jobs and their files: a new one, the demo day, files dropped in, and what each file is for.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import * as u from './units.js';
import { t } from './words.js';

export function files() {
  return html`<section class="files" aria-label=${t('panel.files')}>
    <h2>${t('jobs.title')}</h2>
    <ul class="jobs">${(state.session?.jobs ?? []).map((job) => html`<li><button aria-current=${job.id === state.jobId ? 'true' : 'false'}
      @click=${() => { actions.show('day'); actions.openJob(job.id); }}><b>${job.name}</b> <span>${u.stamp(job.changedAt)}</span>
      ${job.demo ? html`<span>${t('jobs.demo')}</span>` : nothing}</button></li>`)}</ul>
    <form class="newjob" @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      actions.newJob(data.get('name').trim(), 'empty', { date: data.get('date'), zone: data.get('zone').trim() });
    }}>
      <label>${t('jobs.name')} <input name="name" required minlength="1" maxlength="80" autocomplete="off"></label>
      <label>${t('jobs.date')} <input name="date" type="date"></label>
      <label>${t('jobs.zone')} <input name="zone" placeholder="+01:00" autocomplete="off"></label>
      <button>${t('jobs.new')}</button>
    </form>
    <p class="acts"><button class="main" @click=${() => actions.newJob(t('jobs.demoName'), 'demo')}>${t('jobs.fromDemo')}</button>
      <label class="button">${t('jobs.takeOver')}<input type="file" class="sr" @change=${(event) => event.target.files[0] && actions.takeOver(event.target.files[0])}></label></p>
    ${state.job ? ownFiles() : html`<p>${t('jobs.none')}</p>`}
  </section>`;
}

const ownFiles = () => html`<h2>${t('files.title', { job: state.job.name })}</h2>
  <label class="dropzone" @dragover=${(event) => event.preventDefault()} @drop=${(event) => {
    event.preventDefault();
    event.stopPropagation();
    actions.dropFiles([...event.dataTransfer.files]);
  }}>${t('files.drop')}<input type="file" multiple class="sr" @change=${(event) => actions.dropFiles([...event.target.files])}></label>
  <table><thead><tr><th scope="col">${t('files.name')}</th><th scope="col">${t('files.role')}</th><th scope="col">${t('files.size')}</th><td></td></tr></thead>
  <tbody>${state.job.files.map((file) => html`<tr><th scope="row">${file.path}</th><td>${role(file)}</td><td class="num">${size(file.bytes)}</td>
    <td>${file.kind === 'binary' ? nothing : html`<button @click=${() => { actions.show('tables'); actions.openTable(file.path); }}>${t('files.open')}</button>`}</td></tr>`)}</tbody></table>`;

// What a file is for is never guessed: the server names what it may be, a person says what it is.
function role(file) {
  const may = state.dropped?.[file.path]?.roles;
  if (file.role && !may) return t(`role.${file.role}`) === `role.${file.role}` ? file.role : t(`role.${file.role}`);
  if (file.path === 'job.yaml') return t('files.list');
  if (!may) return t('files.unused');
  return html`<select aria-label=${t('files.roleOf', { file: file.path })} @change=${(event) => event.target.value && actions.setRole(file.path, event.target.value)}>
    <option value="">${t('files.choose')}</option>${(may ?? []).map((one) => html`<option value=${one} ?selected=${one === file.role}>${t(`role.${one}`) === `role.${one}` ? one : t(`role.${one}`)}</option>`)}</select>`;
}

const size = (bytes) => (bytes < 2000 ? `${bytes} B` : bytes < 2e6 ? `${Math.round(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
