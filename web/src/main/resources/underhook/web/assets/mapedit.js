// Changing the map: one thing at a time is added, moved or taken away, by mouse or by keyboard. Here
// is what may be changed, the panel for it and what points do; map.js draws it and hands over clicks
// and keys. Nothing counts before it is saved, and a save is one revision that can be undone.
import { html, nothing } from '/lib/lit/lit-html.js';
import { keyed } from '/lib/lit/directives/keyed.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { t } from './words.js';

const YES_NO = ['yes', 'no'];

// What is said of a new thing; the rest can be typed into its file later.
const KINDS = {
  place: { layer: 'places', shape: 'Point', fields: { kind: ['site', 'laydown', 'landing'], name: 'text', agreed: YES_NO } },
  zone: { layer: 'zones', shape: 'Polygon', fields: { rule: ['no-overflight', 'min-height', 'no-hover-below', 'no-fuel'], name: 'text', min_agl_m: 'number', hours_from: 'text', hours_until: 'text' } },
  circle: { layer: 'zones', shape: 'Point', fields: { rule: ['no-overflight', 'min-height', 'no-hover-below', 'no-fuel'], name: 'text', radius_m: 'need', min_agl_m: 'number', hours_from: 'text', hours_until: 'text' } },
  mast: { layer: 'hazards', shape: 'Point', fixed: { kind: 'mast' }, fields: { height_m: 'need', buffer_m: 'number' } },
  wire: { layer: 'wires', shape: 'LineString', fields: { kind: ['power', 'telephone', 'cableway', 'other'], highest_m: 'need', live: YES_NO, voltage_v: 'number' } },
  release: { layer: 'releaseAreas', shape: 'Polygon', fields: { agreed: YES_NO } },
  house: { layer: 'houses', shape: 'Point', fixed: { kind: 'house' }, fields: { buffer_m: 'number' } },
  people: { layer: 'people', shape: 'Point', fixed: { kind: 'people' }, fields: { buffer_m: 'number' } },
  road: { layer: 'roads', shape: 'LineString', fields: { kind: ['road', 'track', 'trail', 'railway'], crossing: ['guarded', 'never', 'allowed'] } },
};
const LEAST = { Point: 1, LineString: 2, Polygon: 3 };

// Each beginning has its number, so that nothing typed for one thing stays behind for the next.
let beginnings = 0;
const fresh = (kind, more = {}) => ({ kind, id: '', points: [], at: null, beginning: ++beginnings, ...more });
const change = (part) => actions.set({ edit: { ...state.edit, ...part } });

export const shapeOf = (edit) => edit.shape ?? KINDS[edit.kind].shape;

const featuresOf = (kind) => (state.map?.layers[KINDS[kind].layer]?.features ?? []).filter((one) => one.properties.id
  && (KINDS[kind].layer !== 'zones' || (one.geometry.type === 'Point') === (kind === 'circle')));

/** The corners of a shape, without the one that closes a ring. */
const cornersOf = ({ type, coordinates }) => (type === 'Point' ? [coordinates]
  : type === 'LineString' ? coordinates : coordinates[0].slice(0, -1)).map((one) => one.slice(0, 2));

export const toggle = () => actions.set({ edit: state.edit ? null : fresh('place') });

/** Takes up what is there already; a shape of several corners is moved as a whole at first. */
function pick(kind, id) {
  const found = featuresOf(kind).find((one) => one.properties.id === id);
  if (!found) return actions.set({ edit: fresh(kind) });
  const points = cornersOf(found.geometry);
  return actions.set({ edit: { ...fresh(kind), id, known: true, shape: found.geometry.type, points, at: points.length > 1 ? 'all' : 0 } });
}

/** A thing that was clicked on the map, by its layer; not while a new one is being named, which may lie over it. */
export function pickFrom(layer, id) {
  if (document.querySelector('.mapedit input[name=id]')?.value) return false;
  const kind = Object.keys(KINDS).find((one) => KINDS[one].layer === layer && featuresOf(one).some((each) => each.properties.id === id));
  if (kind) pick(kind, id);
  return Boolean(kind);
}

const rounded = (point) => point.map((value) => Number(value.toFixed(7)));

/** Puts the corner in hand there, or one more, or the whole shape with its middle there. */
export function put(point) {
  const { points, at } = state.edit, here = rounded(point);
  if (shapeOf(state.edit) === 'Point') return change({ points: [here], at: 0, fault: null, done: null });
  if (at === 'all') {
    const middle = [0, 1].map((k) => points.reduce((sum, one) => sum + one[k], 0) / points.length);
    return change({ points: points.map((one) => rounded([one[0] + here[0] - middle[0], one[1] + here[1] - middle[1]])), fault: null });
  }
  if (at == null) return change({ points: [...points, here], fault: null, done: null });
  return change({ points: points.map((one, i) => (i === at ? here : one)), fault: null });
}

export const take = (at) => change({ at });

/** The next corner, or the one before; beyond the last none is in hand, so that one more can be put. */
function step(by) {
  const { points, at } = state.edit;
  const next = (typeof at === 'number' ? at : by > 0 ? -1 : points.length) + by;
  take(next < 0 || next >= points.length ? null : next);
}

function insert() {
  const { points, at } = state.edit;
  if (typeof at !== 'number' || points.length < 2) return;
  const here = points[at], next = points[(at + 1) % points.length];
  change({ points: [...points.slice(0, at + 1), rounded([(here[0] + next[0]) / 2, (here[1] + next[1]) / 2]), ...points.slice(at + 1)], at: at + 1 });
}

function drop() {
  const { points, at } = state.edit, last = typeof at === 'number' ? at : points.length - 1;
  change({ points: points.filter((_, i) => i !== last), at: null });
}

/** What a key does on the map while it is being changed; false when it means nothing here. */
export function editKey(event, middle) {
  const act = { Enter: () => put(middle()), c: () => step(1), C: () => step(-1), i: insert, Delete: drop, Backspace: drop,
    Escape: () => (state.edit.at == null || shapeOf(state.edit) === 'Point' ? toggle() : take(null)) }[event.key];
  act?.();
  return Boolean(act);
}

function geometry() {
  const { points } = state.edit, type = shapeOf(state.edit);
  return { type, coordinates: type === 'Point' ? points[0] : type === 'LineString' ? points : [[...points, points[0]]] };
}

function properties(form) {
  const data = new FormData(form), said = { ...KINDS[state.edit.kind].fixed };
  for (const [name, sort] of Object.entries(KINDS[state.edit.kind].fields)) {
    const value = data.get(name)?.trim() ?? '';
    if (value) said[name] = sort === 'number' || sort === 'need' ? Number(value) : value;
  }
  return said;
}

async function save(event) {
  event.preventDefault();
  const { kind, id, known } = state.edit, form = event.target;
  const named = known ? id : new FormData(form).get('id').trim();
  const request = { op: known ? 'move' : 'add', layer: KINDS[kind].layer, id: named, geometry: geometry() };
  await send(known ? request : { ...request, properties: properties(form) }, named);
}

const remove = () => send({ op: 'delete', layer: KINDS[state.edit.kind].layer, id: state.edit.id }, state.edit.id);

async function send(request, id) {
  const before = state.job.faults.length, kind = state.edit.kind;
  const kept = await actions.changeFeature(request);
  if (!kept) return change({ fault: state.note?.words });
  const faults = state.job.faults.length > before ? state.job.faults : [];
  return actions.set({ edit: fresh(kind, { done: t(`edit.did.${request.op}`, { id }), faults }) });
}

const field = ([name, sort]) => html`<label>${t(`edit.field.${name}`)} ${Array.isArray(sort)
  ? html`<select name=${name}>${sort.map((one) => html`<option value=${one}>${t(`edit.${one}`)}</option>`)}</select>`
  : html`<input name=${name} type=${sort === 'text' ? 'text' : 'number'} step="any" min="0" autocomplete="off" ?required=${sort === 'need'}>`}</label>`;

const spot = (point) => `${point[1].toFixed(5)}° ${point[0].toFixed(5)}°`;

function where() {
  const { points, at } = state.edit;
  if (!points.length) return t('edit.put');
  if (shapeOf(state.edit) === 'Point') return t('edit.here', { spot: spot(points[0]) });
  if (at === 'all') return t('edit.whole', { count: points.length });
  return at == null ? t('edit.more', { count: points.length }) : t('edit.corner', { n: at + 1, count: points.length, spot: spot(points[at]) });
}

const corners = () => (shapeOf(state.edit) === 'Point' || !state.edit.points.length ? nothing : html`<p class="acts">
  <button type="button" @click=${() => step(-1)}>${t('edit.before')}</button><button type="button" @click=${() => step(1)}>${t('edit.next')}</button>
  <button type="button" ?disabled=${typeof state.edit.at !== 'number'} @click=${insert}>${t('edit.insert')}</button>
  <button type="button" @click=${drop}>${t('edit.drop')}</button>
  <button type="button" aria-pressed=${state.edit.at === 'all'} @click=${() => take('all')}>${t('edit.all')}</button></p>`);

const told = ({ fault, done, faults }) => html`
  ${fault ? html`<p class="refusal" role="alert" lang="en">${fault}</p>` : nothing}
  ${done ? html`<p role="status"><b>${done}</b> <button type="button" @click=${undo}>${t('undo')}</button></p>` : nothing}
  ${faults?.length ? html`<ul class="refusal" role="alert" lang="en">${faults.slice(0, 4).map((one) => html`<li>${one.file} ${one.message}</li>`)}</ul>` : nothing}`;

async function undo() {
  const kind = state.edit.kind;
  if (await actions.undo()) actions.set({ edit: fresh(kind, { done: null }) });
}

export function editPanel() {
  const edit = state.edit;
  if (!edit) return html`<p class="acts"><button @click=${toggle}>${t('edit.open')}</button></p>`;
  const ids = featuresOf(edit.kind).map((one) => one.properties.id);
  return html`<form class="mapedit" aria-label=${t('edit.open')} @submit=${save}>
    <div class="acts"><label>${t('edit.kind')} <select class="kind" @change=${(event) => actions.set({ edit: fresh(event.target.value) })}>${Object.keys(KINDS).map((kind) => html`
        <option value=${kind} ?selected=${kind === edit.kind}>${t(`edit.kind.${kind}`)}</option>`)}</select></label>
      <label>${t('edit.which')} <select class="which" @change=${(event) => pick(edit.kind, event.target.value)}><option value="" ?selected=${!edit.known}>${t('edit.new')}</option>${ids.map((id) => html`
        <option value=${id} ?selected=${edit.known && id === edit.id}>${id}</option>`)}</select></label>
      ${edit.known ? nothing : keyed(edit.beginning, html`<label>${t('edit.field.id')} <input name="id" required maxlength="40" autocomplete="off"></label>${Object.entries(KINDS[edit.kind].fields).map(field)}`)}</div>
    <p class="where" aria-live="polite">${where()}</p>${corners()}
    <p class="acts"><button class="main" ?disabled=${edit.points.length < LEAST[shapeOf(edit)]}>${edit.known ? t('edit.move') : t('edit.add')}</button>
      ${edit.known ? html`<button type="button" @click=${remove}>${t('edit.delete', { id: edit.id })}</button>` : nothing}
      <button type="button" @click=${toggle}>${t('edit.close')}</button></p>
    ${told(edit)}<p class="hint">${t('edit.hint')}</p></form>`;
}
