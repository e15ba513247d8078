// The job's files as tables and texts. Cells are edited in place and take pasting from a
// spreadsheet; every fault stands at its cell.
import { html, nothing } from '/lib/lit/lit-html.js';
import { repeat } from '/lib/lit/directives/repeat.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge } from './marks.js';
import { plainly, said, t } from './words.js';

const editable = () => state.job.files.filter((file) => file.kind !== 'binary');

export function tables() {
  if (!state.job) return nothing;
  const chosen = state.table?.path;
  return html`<section class="tables" aria-label=${t('panel.tables')}>
    <nav class="filepick" aria-label=${t('tables.files')}>${editable().map((file) => html`<button aria-current=${file.path === chosen ? 'true' : 'false'}
      @click=${() => actions.openTable(file.path)}>${file.path}${faultsOf(file.path).length ? html` <span class="count">${faultsOf(file.path).length}</span>` : nothing}</button>`)}</nav>
    ${state.table?.kind === 'table' ? html`${grid(state.table)}${faultList()}` : html`${faultList()}${state.table ? text(state.table) : nothing}`}
  </section>`;
}

const faultsOf = (path) => (state.job.faults ?? []).filter((fault) => fault.file === path);

/** Every fault of the job, each leading to its place. */
export function faultList() {
  const faults = state.job.faults ?? [];
  if (!faults.length) return html`<p>${t('faults.none')}</p>`;
  return html`<h2>${t('faults.title', { count: faults.length })}</h2><ol class="faults">${faults.map((fault) => html`<li>
    ${badge('outside', t('fault'))} <button @click=${() => goTo(fault)}>${fault.file}${fault.line ? `:${fault.line}` : ''} ${fault.field ?? ''}</button>
    <span>${said(wordsOf(fault))}</span></li>`)}</ol>`;
}

/** What is wrong; where it is stands before it, or it stands there. */
function wordsOf({ field, column, message, value, allowed }) {
  const whole = (message ?? `${value ?? ''} ${allowed ?? ''}`).replace(/^\S+?:\d+: /, '');
  return [field, column].reduce((rest, name) => (name && rest.startsWith(`${name}: `) ? rest.slice(name.length + 2) : rest), whole);
}

async function goTo(fault) {
  await actions.openTable(fault.file);
  actions.show('tables');
  requestAnimationFrame(() => {
    const cell = document.querySelector('.grid [aria-invalid=true]') ?? document.querySelector('.filetext');
    cell?.focus();
    cell?.scrollIntoView({ block: 'center' });
  });
}

function text(file) {
  return html`<form class="textfile" @submit=${(event) => {
    event.preventDefault();
    actions.setText(file.path, new FormData(event.target).get('text'));
  }}>
    <label>${file.path}<textarea class="filetext" name="text" rows="22" spellcheck="false" .value=${file.text ?? ''}></textarea></label>
    <button class="main">${t('tables.save')}</button>
  </form>`;
}

function grid(table) {
  const faultAt = new Map((table.faults ?? []).map((fault) => [`${fault.row}:${nameOf(table, fault.column)}`, fault]));
  return html`<p class="hint">${t('tables.hint')}</p>
    <div class="wide"><table class="grid" role="grid" aria-label=${table.path} @keydown=${keyed} @paste=${pasted} @dblclick=${(event) => edit(event.target.closest('td'))}>
    <thead><tr><th scope="col">${t('tables.row')}</th>${table.columns.map((column) => html`<th scope="col" class=${column.known === false ? 'unknown' : ''}>${column.name}${column.unit ? html` <small>${column.unit}</small>` : nothing}</th>`)}<td></td></tr></thead>
    <tbody>${repeat(table.rows, (_, r) => r, (row, r) => html`<tr><th scope="row">${r + 1}</th>${table.columns.map((column, c) => cell(row[c] ?? '', r, c, faultAt.get(`${r}:${column.name}`)))}
      <td><button class="small" aria-label=${t('tables.delete', { row: r + 1 })} @click=${() => actions.changeCells(table.path, t('tables.didDelete', { row: r + 1 }), { cells: [], deleteRows: [r] })}>−</button></td></tr>`)}</tbody></table></div>
    <p class="acts"><button @click=${() => actions.changeCells(table.path, t('tables.didAdd'), { cells: [], insertRows: [{ at: table.rows.length, values: table.columns.map(() => '') }] })}>${t('tables.add')}</button></p>`;
}

const nameOf = (table, column) => (typeof column === 'number' ? table.columns[column]?.name : column);

const cell = (value, r, c, fault) => html`<td tabindex=${r === 0 && c === 0 ? 0 : -1} role="gridcell" data-r=${r} data-c=${c}
  aria-invalid=${fault ? 'true' : 'false'} title=${fault ? plainly(wordsOf(fault)) : ''}><span class="value">${value}</span>${fault ? html`<span class="fault">${said(wordsOf(fault))}</span>` : nothing}</td>`;

const at = (r, c) => document.querySelector(`.grid td[data-r="${r}"][data-c="${c}"]`);
const STEP = { ArrowDown: [1, 0], ArrowUp: [-1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] };

function keyed(event) {
  const td = event.target.closest('td[data-r]');
  if (!td || event.target.matches('input')) return;
  const r = Number(td.dataset.r), c = Number(td.dataset.c), step = STEP[event.key];
  if (step) {
    at(r + step[0], c + step[1])?.focus();
    event.preventDefault();
  } else if (event.key === 'Enter' || event.key === 'F2') {
    edit(td);
    event.preventDefault();
  } else if (event.key === 'Delete') save(r, c, '');
  else if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) edit(td, '');
}

/** An input laid over the cell; Enter and leaving it save, Escape leaves all as it was. */
function edit(td, start = null) {
  if (!td?.dataset.r || td.querySelector('input')) return;
  const r = Number(td.dataset.r), c = Number(td.dataset.c), old = state.table.rows[r][c] ?? '';
  const input = Object.assign(document.createElement('input'), { value: start ?? old, className: 'celledit' });
  input.setAttribute('aria-label', `${state.table.columns[c].name}, ${r + 1}`);
  let done = false;
  const finish = (keep, then) => {
    if (done) return;
    done = true;
    input.remove();
    if (keep && input.value !== old) save(r, c, input.value, then);
    else then?.();
  };
  input.addEventListener('keydown', (event) => {
    event.stopPropagation();
    if (event.key === 'Enter') finish(true, () => (at(r + 1, c) ?? td).focus());
    else if (event.key === 'Tab') finish(true, () => at(r, c + (event.shiftKey ? -1 : 1))?.focus());
    else if (event.key === 'Escape') finish(false, () => td.focus());
    else return;
    event.preventDefault();
  });
  input.addEventListener('blur', () => finish(true));
  td.append(input);
  input.focus();
}

async function save(r, c, value, then) {
  const { path, columns } = state.table;
  await actions.changeCells(path, t('tables.didCell', { column: columns[c].name, row: r + 1 }), { cells: [{ row: r, column: c, value }] });
  requestAnimationFrame(() => then?.());
}

/** What a spreadsheet puts on the clipboard: rows by line, cells by tab; more rows are added. */
function pasted(event) {
  const td = event.target.closest('td[data-r]');
  if (!td || event.target.matches('input')) return;
  event.preventDefault();
  const block = event.clipboardData.getData('text/plain').replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n').map((line) => line.split('\t'));
  const { path, columns, rows } = state.table, r0 = Number(td.dataset.r), c0 = Number(td.dataset.c);
  const cells = [], insertRows = [];
  block.forEach((line, i) => {
    const row = r0 + i;
    if (row >= rows.length) {
      insertRows.push({ at: row, values: columns.map((_, c) => line[c - c0] ?? '') });
    } else line.forEach((value, j) => columns[c0 + j] && cells.push({ row, column: c0 + j, value }));
  });
  actions.changeCells(path, t('tables.didPaste', { count: block.length }), { cells, insertRows });
}
