// The map beside the spine. Relief and contours come from the job's own terrain, painted by the
// server, so nothing is fetched from anywhere else. Every place is drawn by a function of ours that
// also counts what it drew: names may give way to each other, marks never do.
import { state, listen } from './state.js';
import { actions } from './actions.js';
import { styleOf, drawPlace, nameOf } from './mapstyle.js';
import { along, extentOf, named, read, rounded, stretches, titled, toView } from './mapthings.js';
import { editKey, pickFrom, put, shapeOf, take } from './mapedit.js';
import { t } from './words.js';

const { Feature, Map: OlMap, View, geom, interaction, layer, source, proj, style } = window.ol;
const GROUPS = ['contours', 'ground', 'water', 'zones', 'releaseAreas', 'roads', 'houses', 'people', 'hazards', 'wires'];
/** The library's number for a view that is on its way; it does not hand the name out in one file. */
const ANIMATING = 0;

let map, target, fitted = false, fittedAt = '', shown = null, drawnLift = null, othersOf = null, marked = new Set(), walkIndex = -1;
const layers = {};
/** The things of each group of the ground, as shown. */
const things = Object.fromEntries(GROUPS.map((name) => [name, []]));
/** So many lifts of a place are named where the keys stand. */
const MOST_NAMED = 6;
/** So much wider than the view is the picture of what stays, so that little is bare while it is moved. */
const WIDER = 1.3;
/** Moved by no more than this it is not drawn anew; less than what it is wider on the smallest screen. */
const NEAR_PIXELS = 50;
/** A chosen lift fills at least this much of the view, one way or the other. */
const LEAST_SHARE = 0.45;

/** Makes the map inside that element, once. */
export function startMap(element) {
  target = element;
  layers.ground = still((feature, resolution) => styleOf(feature.get('group'))(feature, resolution));
  layers.relief = new layer.Image({ opacity: 0.6, className: 'relief' });
  layers.reach = vector(styleOf('reach'));
  layers.strips = vector(styleOf('strips'));
  layers.others = still(styleOf('legs'));
  layers.legs = vector(styleOf('legs'));
  layers.places = vector(placeStyle, false);
  layers.names = new layer.Vector({ source: new source.Vector(), style: (feature, resolution) => nameOf(feature, { chosen: chosenPlaces().has(feature.getId()), resolution, marks: layers.places.getSource(), seen: map.getView().calculateExtent() }), declutter: true });
  layers.craft = vector(styleOf('craft'));
  layers.sketch = vector(styleOf('sketch'));
  map = new OlMap({ target, layers: [layers.relief, layers.ground, layers.others, layers.reach, layers.strips,
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

// What changes with a choice is little and is drawn in every frame; what stays is a picture, which is moved and
// stretched until there is time to draw it anew.
// Places are drawn by a function of ours, which is asked in every frame anyway.
const vector = (how, isLively = true) => new layer.Vector({ source: new source.Vector(), style: how, updateWhileAnimating: isLively });
const still = (how) => new layer.VectorImage({ source: new source.Vector(), style: how, imageRatio: WIDER, renderBuffer: NEAR_PIXELS });

const placeStyle = (feature) => [new style.Style({
  renderer: (at, frame) => {
    marked.add(feature.getId());
    drawPlace(frame.context, at, feature, { ratio: frame.pixelRatio, chosen: chosenPlaces().has(feature.getId()), held: target.dataset.at === feature.getId() });
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

function fill(name, features) {
  layers[name].getSource().clear();
  layers[name].getSource().addFeatures(features);
}

function showGround(data) {
  for (const name of GROUPS) things[name] = read(data.layers[name]).map(rounded);
  for (const name of GROUPS) for (const thing of things[name]) thing.set('group', name, true);
  fill('ground', GROUPS.flatMap((name) => things[name]));
  const places = read(data.layers.places);
  for (const place of places) place.setId(place.get('id'));
  fill('places', places);
  fill('names', [...places.map(named), ...[...things.zones, ...things.releaseAreas].map(titled)]);
  showRelief(data.bounds);
  // Only once: a change on the map must not throw away where the reader is.
  if (!fitted) fitAll();
}

/** The server paints the relief in this very projection, over these bounds. */
async function showRelief(bounds) {
  const picture = await actions.relief(bounds);
  if (!picture || shown.bounds !== bounds) return;
  const url = URL.createObjectURL(picture), before = layers.relief.getSource()?.getUrl();
  layers.relief.setSource(new source.ImageStatic({ url, imageExtent: extentOf(bounds) }));
  if (before) URL.revokeObjectURL(before);
}

const standsAt = () => [map.getView().getCenter(), map.getView().getResolution()].join();

/** Shows every place and way: some ways lead far round what may not be flown over. */
export function fitAll() {
  const extent = [...layers.names.getSource().getExtent()], ways = layers.others.getSource().getExtent();
  if (Number.isFinite(ways[0])) window.ol.extent.extend(extent, ways);
  const size = map.getSize();
  fitted = Boolean(size?.[0] && size[1]) && Number.isFinite(extent[0]);
  if (!fitted) return;
  map.getView().fit(extent, { padding: [40, 64, 40, 40], maxZoom: 18 });
  fittedAt = standsAt();
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

/** The aircraft and the load under it at the slider's place on the leg. */
function showCraft() {
  const path = chosenStep()?.legs[state.leg]?.path;
  const points = state.sheet.lift === state.lift ? state.sheet.section?.points : null;
  const here = points?.[Math.round(state.at * (points.length - 1))];
  const at = here?.lon != null ? [here.lon, here.lat] : path ? along(path, state.at) : null;
  fill('craft', at ? [new Feature(new geom.Point(toView(at)))] : []);
}

function follow(now = state, change = state) {
  if ('map' in change && now.map && now.map !== shown) {
    shown = now.map;
    showGround(now.map);
  }
  if ('plan' in change || 'lift' in change || 'map' in change) showLegs();
  // The ways come after the places; whoever has moved the map by then stays where they are.
  if ('plan' in change && fitted && standsAt() === fittedAt) fitAll();
  if ('edit' in change) showSketch();
  if ('at' in change || 'leg' in change || 'lift' in change || 'sheet' in change) showCraft();
  if ('lift' in change) {
    layers.places.changed();
    layers.names.changed();
    quickly(bringIn);
  }
  if ('reader' in change) for (const one of Object.values(layers)) one.changed();
  if ('panel' in change || 'job' in change) requestAnimationFrame(seen);
}

/** A map that was hidden has had no size, and another panel gives it another one: it is fitted anew until it was moved. */
function seen() {
  map.updateSize();
  if (!fitted || standsAt() === fittedAt) fitAll();
  else quickly(bringIn);
}

/**
 * Shows another part of the map in the very next frame: what stays is shown as it was drawn, moved and stretched,
 * under what was chosen, and drawn anew after that frame.
 */
function quickly(move) {
  const view = map.getView(), place = () => [view.getCenter(), view.getResolution()].join(), before = place();
  move();
  if (place() === before) return;
  view.setHint(ANIMATING, 1);
  map.once('postrender', () => requestAnimationFrame(() => setTimeout(() => view.cancelAnimations())));
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
    const name = feature.get('group') ?? Object.keys(layers).find((one) => layers[one] === from);
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

/** A few by name, many by their number. */
const briefly = (loads) => (loads.length > MOST_NAMED ? `${loads.length}` : loads.join(', ') || '–');

/** Places in the order in which the day comes to them; those that it does not come to follow by their names. */
function byDay() {
  const lifts = state.plan?.view.lifts ?? [];
  const met = new Map();
  for (const { step } of lifts) for (const { place } of [...state.plan.steps[step].drops, { place: state.plan.steps[step].from }]) if (!met.has(place)) met.set(place, met.size);
  const turn = (place) => met.get(place.getId()) ?? met.size;
  return layers.places.getSource().getFeatures().sort((a, b) => turn(a) - turn(b) || String(a.getId()).localeCompare(String(b.getId()), 'en', { numeric: true }));
}

/** The keyboard's way over the map: n and p walk over the places, Enter opens the lift there. */
function keyed(event) {
  if (event.target !== target) return;
  if (state.edit && editing(event)) {
    event.preventDefault();
    return;
  }
  const places = byDay();
  if ((event.key === 'n' || event.key === 'p') && places.length) {
    walkIndex = (walkIndex + (event.key === 'n' ? 1 : -1) + places.length) % places.length;
    const place = places[walkIndex];
    target.dataset.at = place.getId();
    quickly(() => map.getView().setCenter(place.getGeometry().getCoordinates()));
    layers.places.changed();
    actions.say(t('map.at', { place: place.getId(), name: place.get('name') ?? '', lifts: briefly(liftsAt(place.getId()).map((lift) => lift.loads.join('+'))) }));
  } else if (event.key === 'Enter' && target.dataset.at) choosePlace(target.dataset.at);
  else if (event.key === '0') fitAll();
  else return;
  event.preventDefault();
}
