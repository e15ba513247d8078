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
      <span>${t(job.plannedAt ? 'jobs.planned' : 'jobs.unplanned')}</span> <span>${job.id}</span>
      ${job.demo ? html`<span>${t('jobs.demo')}</span>` : nothing}</button></li>`)}</ul>
    <details class="begin" ?open=${!state.session?.jobs.length}><summary>${t('jobs.begin')}</summary>
    <form class="newjob" @submit=${(event) => {
      event.preventDefault();
      const data = new FormData(event.target);
      actions.newJob(data.get('name').trim(), 'empty', Object.fromEntries(['date', 'zone', 'crs', 'magneticVariationDeg', 'machineStart'].map((one) => [one, data.get(one).trim()])));
    }}>
      <label>${t('jobs.name')} <input name="name" required minlength="1" maxlength="80" autocomplete="off"></label>
      <label>${t('jobs.date')} <input name="date" type="date"></label>
      <label>${t('jobs.zone')} <input name="zone" placeholder="+01:00" autocomplete="off" size="7"></label>
      <label>${t('jobs.crs')} <input name="crs" placeholder="EPSG:32632" autocomplete="off" size="12"></label>
      <label>${t('jobs.variation')} <input name="magneticVariationDeg" type="number" step="0.1" min="-180" max="180" placeholder="4.0" autocomplete="off"></label>
      <label>${t('jobs.machineStart')} <input name="machineStart" placeholder="A" autocomplete="off" size="5"></label>
      <button class=${state.session?.jobs.length ? '' : 'main'}>${t('jobs.new')}</button>
    </form>
    <p class="acts"><button @click=${() => actions.newJob(t('jobs.demoName'), 'demo')}>${t('jobs.fromDemo')}</button>
      <label class="button">${t('jobs.takeOver')}<input type="file" class="sr" @change=${(event) => event.target.files[0] && actions.takeOver(event.target.files[0])}></label></p></details>
    ${state.job ? ownFiles() : html`<p>${t('jobs.none')}</p>${evening()}`}
  </section>`;
}

/** The way from nothing to the cards, for whoever has no job open yet. */
const evening = () => html`<ol class="evening">${['make', 'drop', 'mend', 'plan', 'print'].map((step) => html`<li>${t(`evening.${step}`)}</li>`)}</ol>`;

const NEEDED = ['loads', 'places', 'machine', 'weather', 'crews', 'rules', 'terrain'];

/** What no job goes without and this one has no file for yet. */
function stillNeeded() {
  const missing = NEEDED.filter((role) => !state.job.files.some((file) => file.role === role));
  return missing.length ? html`<p class="stale">${t('files.needed', { roles: missing.map(roleWords).join(', ') })}</p>` : nothing;
}

const ownFiles = () => html`<h2>${t('files.title', { job: state.job.name })}</h2>
  ${stillNeeded()}
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
  // What came with the job and serves for nothing, such as a .wkt, may be nothing.
  const may = state.dropped?.[file.path]?.roles ?? (file.roles?.length ? file.roles : undefined);
  if (file.role && !may) return roleWords(file.role);
  if (file.path === 'job.yaml') return t('files.list');
  if (!may) return t('files.unused');
  return html`<select aria-label=${t('files.roleOf', { file: file.path })} @change=${(event) => event.target.value && named(file.path, event.target.value)}>
    <option value="">${t('files.choose')}</option>${(may ?? []).map((one) => html`<option value=${one} ?selected=${one === file.role}>${roleWords(one)}</option>`)}</select>`;
}

// What job.yaml must or may say beside a file of that role; docs/formats.md has all of it.
const DETAILS = {
  weather: { 'reference-elevation-m': 'need', 'lapse-c-per-100m': 'need', until: 'time', source: 'text' },
  terrain: { crs: 'text', licence: 'text', attribution: 'text' },
  canopy: { crs: 'text', 'spread-m': 'number', licence: 'text', attribution: 'text' },
  places: { crs: 'text' }, zones: { crs: 'text' }, wires: { crs: 'text' }, map: { crs: 'text' }, 'release-areas': { crs: 'text' },
};

/** Says what a file is; where more has to be said with it, that is asked for first. */
function named(path, role) {
  const fields = Object.entries(DETAILS[role] ?? {});
  if (!fields.length) return actions.setRole(path, role);
  return actions.open(() => html`<h2>${t('details.title', { file: path, role: roleWords(role) })}</h2>
    <form @submit=${async (event) => {
      event.preventDefault();
      const data = new FormData(event.target), details = {};
      for (const [name] of fields) if (data.get(name).trim()) details[name] = data.get(name).trim();
      actions.close();
      await actions.setRole(path, role, details);
    }}>${fields.map(([name, sort]) => html`<label>${t(`details.${name}`)} <input name=${name} ?required=${sort === 'need'} autocomplete="off"
      type=${sort === 'text' ? 'text' : sort === 'time' ? 'time' : 'number'} step=${sort === 'time' ? '60' : 'any'}></label>`)}
      <p class="hint">${t(`details.hint.${role === 'weather' ? role : 'crs'}`)}</p>
      <button class="main">${t('details.go')}</button></form>`);
}

/** The server names a role as a field of job.yaml, with either line between its words. */
const roleWords = (role) => {
  const key = `role.${role.replaceAll('_', '-')}`;
  return t(key) === key ? role : t(key);
};

const size = (bytes) => (bytes < 2000 ? `${bytes} B` : bytes < 2e6 ? `${Math.round(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`);
