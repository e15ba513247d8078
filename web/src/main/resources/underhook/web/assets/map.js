// The map beside the spine. Relief and contours come from the job's own terrain, painted by the
// server, so nothing is fetched from anywhere else. Every place is drawn by a function of ours that
// also counts what it drew: names may give way to each other, marks never do.
import { state, listen } from './state.js';
import { actions } from './actions.js';
import { styleOf, drawPlace, nameOf } from './mapstyle.js';
import { editKey, pickFrom, put, shapeOf, take } from './mapedit.js';
import { t } from './words.js';

const { Feature, Map: OlMap, View, format, geom, interaction, layer, source, proj, style } = window.ol;
const json = new format.GeoJSON();
const GROUPS = ['contours', 'ground', 'water', 'zones', 'releaseAreas', 'roads', 'houses', 'people', 'hazards', 'wires'];
const toView = (lonLat) => proj.fromLonLat(lonLat.slice(0, 2));

let map, target, fitted = false, shown = null, drawnLift = null, othersOf = null, marked = new Set(), walkIndex = -1;
const layers = {};
/** A chosen lift fills at least this much of the view, one way or the other. */
const LEAST_SHARE = 0.45;

/** Makes the map inside that element, once. */
export function startMap(element) {
  target = element;
  for (const name of GROUPS) layers[name] = vector(styleOf(name));
  layers.relief = new layer.Image({ opacity: 0.6, className: 'relief' });
  layers.reach = vector(styleOf('reach'));
  layers.strips = vector(styleOf('strips'));
  layers.others = vector(styleOf('legs'));
  layers.legs = vector(styleOf('legs'));
  layers.places = vector(placeStyle);
  layers.names = new layer.Vector({ source: new source.Vector(), style: (feature) => nameOf(feature, chosenPlaces().has(feature.getId())), declutter: true });
  layers.craft = vector(styleOf('craft'));
  layers.sketch = vector(styleOf('sketch'));
  map = new OlMap({ target, layers: [layers.relief, ...GROUPS.map((name) => layers[name]), layers.others, layers.reach, layers.strips,
    layers.legs, layers.places, layers.names, layers.craft, layers.sketch], view: new View({ center: [0, 0], zoom: 2, maxZoom: 20 }) });
  map.on('precompose', () => marked.clear());
  map.on('rendercomplete', () => {
    target.dataset.marks = marked.size;
  });
  map.on('postrender', () => {
    target.dataset.lift = drawnLift ?? '';
  });
  map.on('singleclick', clicked);
  map.addInteraction(dragging());
  target.addEventListener('keydown', keyed);
  listen(follow);
  follow();
}

const vector = (how) => new layer.Vector({ source: new source.Vector(), style: how });

const placeStyle = (feature) => [new style.Style({
  renderer: (at, frame) => {
    marked.add(feature.getId());
    drawPlace(frame.context, at, feature, { ratio: frame.pixelRatio, chosen: chosenPlaces().has(feature.getId()) });
  },
  hitDetectionRenderer: (at, frame) => {
    frame.context.beginPath();
    frame.context.arc(at[0], at[1], 12 * frame.pixelRatio, 0, 7);
    frame.context.fill();
  },
})];

const chosenStep = () => {
  const lift = state.plan?.view.lifts.find((one) => one.number === state.lift);
  return lift ? state.plan.steps[lift.step] : null;
};

const chosenPlaces = () => {
  const step = chosenStep();
  return new Set(step ? [step.from, ...step.drops.map((drop) => drop.place), step.to] : []);
};

const read = (collection) => (collection ? json.readFeatures(collection, { featureProjection: 'EPSG:3857' }) : []);

function fill(name, features) {
  layers[name].getSource().clear();
  layers[name].getSource().addFeatures(features);
}

/** What is given as a point and a radius becomes the circle that it is. */
function rounded(feature) {
  const radiusM = feature.get('radiusM'), shape = feature.getGeometry();
  if (radiusM > 0 && shape.getType() === 'Point') {
    feature.setGeometry(geom.Polygon.circular(proj.toLonLat(shape.getCoordinates()), radiusM, 64).transform('EPSG:4326', 'EPSG:3857'));
  }
  return feature;
}

function showGround(data) {
  for (const name of GROUPS) fill(name, read(data.layers[name]).map(rounded));
  const places = read(data.layers.places);
  for (const place of places) place.setId(place.get('id'));
  fill('places', places);
  fill('names', [...places.map(named), ...['zones', 'releaseAreas'].flatMap((name) => layers[name].getSource().getFeatures().map(titled))]);
  showRelief(data.bounds);
  // Only once: a change on the map must not throw away where the reader is.
  if (!fitted) fitAll();
}

function named(place) {
  const name = place.clone();
  name.setId(place.getId());
  return name;
}

/** The name of an area, at its middle: names give way to each other there, areas never do. */
function titled(area) {
  const shape = area.getGeometry();
  const [x, y] = shape.getType() === 'Polygon' ? shape.getInteriorPoint().getCoordinates() : shape.getClosestPoint(shape.getExtent().slice(0, 2));
  return new Feature({ geometry: new geom.Point([x, y]), title: area.get('name') ?? area.get('id') ?? '' });
}

/** The server paints the relief in this very projection, over these bounds. */
async function showRelief(bounds) {
  const picture = await actions.relief();
  if (!picture || shown.bounds !== bounds) return;
  const url = URL.createObjectURL(picture), before = layers.relief.getSource()?.getUrl();
  layers.relief.setSource(new source.ImageStatic({ url, imageExtent: proj.transformExtent(bounds, 'EPSG:4326', 'EPSG:3857') }));
  if (before) URL.revokeObjectURL(before);
}

export function fitAll() {
  const extent = layers.names.getSource().getExtent();
  const size = map.getSize();
  fitted = Boolean(size?.[0] && size[1]) && Number.isFinite(extent[0]);
  if (fitted) map.getView().fit(extent, { padding: [40, 64, 40, 40], maxZoom: 18 });
}

function showLegs() {
  const now = chosenStep();
  const lines = (step, chosen) => (step.legs ?? []).map((leg, index) => new Feature({
    geometry: new geom.LineString(leg.path.map(toView)), chosen, index, empty: !leg.carrying.length, step: state.plan.steps.indexOf(step) }));
  // All the day's legs are many: they are laid once for a plan, the chosen ones over them.
  if (othersOf !== state.plan) {
    othersOf = state.plan;
    fill('others', (othersOf?.steps ?? []).filter((step) => step.kind === 'rotation').flatMap((step) => lines(step, false)));
  }
  fill('legs', now ? lines(now, true) : []);
  drawnLift = state.lift;
  fill('strips', now ? now.legs.flatMap(stretches) : []);
  fill('reach', now ? now.legs.filter((leg) => leg.release?.farthestM > 0).map((leg) => new Feature({
    geometry: new geom.LineString(leg.path.map(toView)), farthestM: leg.release.farthestM })) : []);
}

/** Where along a leg letting the load go is no option, as parts of its line. */
function stretches(leg) {
  const line = new geom.LineString(leg.path.map(toView));
  return (leg.release?.stretches ?? []).map((stretch) => {
    const parts = [];
    for (let i = 0; i <= 12; i++) parts.push(line.getCoordinateAt(Math.min(1, (stretch.fromM + ((stretch.toM - stretch.fromM) * i) / 12) / leg.distanceM)));
    return new Feature({ geometry: new geom.LineString(parts), use: stretch.use, what: (stretch.what ?? []).join(', ') });
  });
}

/** The aircraft and the load under it at the slider's place on the leg. */
function showCraft() {
  const path = chosenStep()?.legs[state.leg]?.path;
  const points = state.sheet.lift === state.lift ? state.sheet.section?.points : null;
  const here = points?.[Math.round(state.at * (points.length - 1))];
  const at = here?.lon != null ? [here.lon, here.lat] : path ? along(path, state.at) : null;
  fill('craft', at ? [new Feature(new geom.Point(toView(at)))] : []);
}

function along(path, part) {
  const line = new geom.LineString(path.map(toView));
  return proj.toLonLat(line.getCoordinateAt(part));
}

function follow(now = state, change = state) {
  if ('map' in change && now.map && now.map !== shown) {
    shown = now.map;
    showGround(now.map);
  }
  if ('plan' in change || 'lift' in change || 'map' in change) showLegs();
  if ('edit' in change) showSketch();
  if ('at' in change || 'leg' in change || 'lift' in change || 'sheet' in change) showCraft();
  if ('lift' in change) {
    layers.places.changed();
    layers.names.changed();
    bringIn();
  }
  if ('reader' in change) for (const one of Object.values(layers)) one.changed();
  if ('panel' in change || 'job' in change) requestAnimationFrame(seen);
}

/** A map that was hidden has had no size, so nothing could be fitted into it. */
function seen() {
  map.updateSize();
  if (!fitted) fitAll();
}

/** Moves the view only when the chosen lift would otherwise lie outside it, or be too small to read. */
function bringIn() {
  const step = chosenStep();
  if (!step) return;
  const line = new geom.LineString(step.legs.flatMap((leg) => leg.path.map(toView)));
  const view = map.getView(), seen = view.calculateExtent(map.getSize());
  const box = line.getExtent();
  const isSmall = Math.max((box[2] - box[0]) / (seen[2] - seen[0]), (box[3] - box[1]) / (seen[3] - seen[1])) < LEAST_SHARE;
  if (isSmall || !(seen[0] <= box[0] && seen[1] <= box[1] && seen[2] >= box[2] && seen[3] >= box[3])) {
    view.fit(box, { padding: [60, 60, 60, 60], maxZoom: 18 });
  }
}

const liftsAt = (place) => state.plan?.view.lifts.filter((lift) => state.plan.steps[lift.step].drops.some((drop) => drop.place === place)
  || state.plan.steps[lift.step].from === place) ?? [];

function clicked(event) {
  if (state.edit) {
    edited(event);
    return;
  }
  let best = null;
  map.forEachFeatureAtPixel(event.pixel, (feature, from) => {
    if (from === layers.places) best = { place: feature.getId() };
    else if ((from === layers.legs || from === layers.others) && !best) best = { step: feature.get('step') };
  }, { hitTolerance: 8 });
  if (best?.place) choosePlace(best.place);
  else if (best) actions.choose(state.plan.view.lifts.find((lift) => lift.step === best.step)?.number ?? null);
}

/** A click while the map is being changed: takes up a corner or a thing, or puts a point there. */
function edited(event) {
  const found = { corner: null, thing: null };
  map.forEachFeatureAtPixel(event.pixel, (feature, from) => {
    const name = Object.keys(layers).find((one) => layers[one] === from);
    if (name === 'sketch') found.corner ??= feature.get('corner');
    else if (feature.get('id')) found.thing ??= [name, feature.get('id')];
  }, { hitTolerance: 8 });
  if (found.corner != null && state.edit.points.length > 1) take(found.corner);
  else if (state.edit.points.length || !found.thing || !pickFrom(...found.thing)) put(proj.toLonLat(event.coordinate));
}

/** Corners in the sketch can be dragged too. */
function dragging() {
  const cornerAt = (event) => map.forEachFeatureAtPixel(event.pixel, (feature, from) => (from === layers.sketch ? feature.get('corner') : undefined), { hitTolerance: 8 });
  return new interaction.Pointer({
    handleDownEvent: (event) => {
      const corner = state.edit ? cornerAt(event) : null;
      if (corner == null) return false;
      take(corner);
      return true;
    },
    handleDragEvent: (event) => put(proj.toLonLat(event.coordinate)),
  });
}

function showSketch() {
  const edit = state.edit, points = (edit?.points ?? []).map(toView);
  const whole = points.length < 2 ? [] : [new Feature(shapeOf(edit) === 'Polygon' ? new geom.Polygon([[...points, points[0]]]) : new geom.LineString(points))];
  fill('sketch', [...whole, ...points.map((point, corner) => new Feature({ geometry: new geom.Point(point), corner, held: edit.at === corner || edit.at === 'all' }))]);
}

/** The next lift that goes to that place, after the one chosen now. */
function choosePlace(place) {
  const lifts = liftsAt(place).map((lift) => lift.number);
  if (lifts.length) actions.choose(lifts.find((n) => n > (state.lift ?? 0)) ?? lifts[0]);
  else actions.say(t('map.noLift', { place }));
}

const FINE = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const FINE_PIXELS = 4;

/** While the map is being changed the cross in its middle is where Enter puts a point. */
function editing(event) {
  const view = map.getView(), fine = event.shiftKey && FINE[event.key];
  if (fine) {
    const step = FINE_PIXELS * view.getResolution(), [x, y] = view.getCenter();
    view.setCenter([x + fine[0] * step, y + fine[1] * step]);
    return true;
  }
  const before = state.edit.at;
  if (!editKey(event, () => proj.toLonLat(view.getCenter()))) return false;
  const at = state.edit?.at;
  if (at !== before && typeof at === 'number') view.setCenter(toView(state.edit.points[at]));
  return true;
}

/** The keyboard's way over the map: n and p walk over the places, Enter opens the lift there. */
function keyed(event) {
  if (event.target !== target) return;
  if (state.edit && editing(event)) {
    event.preventDefault();
    return;
  }
  const places = layers.places.getSource().getFeatures();
  if ((event.key === 'n' || event.key === 'p') && places.length) {
    walkIndex = (walkIndex + (event.key === 'n' ? 1 : -1) + places.length) % places.length;
    const place = places[walkIndex];
    target.dataset.at = place.getId();
    map.getView().setCenter(place.getGeometry().getCoordinates());
    actions.say(t('map.at', { place: place.getId(), name: place.get('name') ?? '', lifts: liftsAt(place.getId()).map((lift) => lift.loads.join('+')).join(', ') || '–' }));
  } else if (event.key === 'Enter' && target.dataset.at) choosePlace(target.dataset.at);
  else if (event.key === '0') fitAll();
  else return;
  event.preventDefault();
}
