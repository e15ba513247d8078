// A look from anywhere: terrain, wires, aircraft, line and load at the slider's place. Loaded only
// when it is opened.
import * as three from '/lib/three/build/three.module.min.js';
import { api } from './api.js';
import { state, listen } from './state.js';
import { t } from './words.js';

const EARTH_M_PER_DEG = 111320;
/** So far from the machine the line under it and the wires round it are both large enough to see. */
const NEAR_M = 170;
const WIRE_M = 0.5;
const WAY_M = 0.35;
const POST_M = 40;
let view = null;

export async function startLook(element) {
  element.replaceChildren(Object.assign(document.createElement('p'), { textContent: t('waiting') }));
  try {
    const answer = await api.heights(state.jobId, 320, 200);
    const [west, south, east, north] = answer.bounds;
    const ground = { ...answer, west, south, east, north };
    view = make(element, ground);
    draw();
  } catch (fault) {
    element.replaceChildren(Object.assign(document.createElement('p'), { textContent: t('look.failed', { why: fault.message }) }));
  }
}

/** So far east of a longitude, the short way round the Earth: a day may lie across the 180th meridian. */
const offDeg = (lon, from) => lon - from - 360 * Math.round((lon - from) / 360);

/** Metres east, up, south of the middle of the ground; only for looking at. */
function frame(ground) {
  const lat0 = (ground.south + ground.north) / 2, lon0 = (ground.west + ground.east) / 2;
  const eastM = EARTH_M_PER_DEG * Math.cos((lat0 * Math.PI) / 180);
  return (lon, lat, height) => new three.Vector3(offDeg(lon, lon0) * eastM, height, (lat0 - lat) * EARTH_M_PER_DEG);
}

const css = (name) => new three.Color(getComputedStyle(document.documentElement).getPropertyValue(name).trim());

function make(element, ground) {
  const place = frame(ground), width = element.clientWidth || 800, height = Math.max(320, Math.min(Math.round(width * 0.55), innerHeight - Math.round(element.getBoundingClientRect().top) - 80));
  const renderer = new three.WebGLRenderer({ antialias: true });
  renderer.setSize(width, height);
  renderer.domElement.tabIndex = 0;
  renderer.domElement.setAttribute('role', 'img');
  renderer.domElement.setAttribute('aria-label', t('look.words'));
  const scene = new three.Scene();
  scene.background = css('--page');
  const sun = new three.DirectionalLight(0xffffff, 2.4);
  sun.position.set(-1, 0.7, -0.6);
  scene.add(sun, new three.AmbientLight(0xffffff, 0.9), relief(ground, place));
  for (const contour of state.map?.layers.contours?.features ?? []) scene.add(...contours(contour, place));
  for (const wire of state.map?.layers.wires?.features ?? []) scene.add(...lines(wire, place, ground));
  for (const site of state.map?.layers.places?.features ?? []) scene.add(...signpost(site, place, ground));
  const moving = new three.Group();
  scene.add(moving);
  const camera = new three.PerspectiveCamera(50, width / height, 1, 60000);
  element.replaceChildren(renderer.domElement, Object.assign(document.createElement('p'), { className: 'hint', textContent: t('look.hint') }));
  const look = { renderer, scene, camera, moving, place, ground, turn: 0.7, tilt: 0.3, far: NEAR_M, element };
  steer(look);
  return look;
}

function relief(ground, place) {
  const shape = new three.BufferGeometry(), spots = [], index = [], known = [];
  for (let r = 0; r < ground.rows; r++) {
    for (let c = 0; c < ground.columns; c++) {
      const height = ground.heightsM[r * ground.columns + c];
      const lon = ground.west + ((ground.east - ground.west) * c) / (ground.columns - 1), lat = ground.north - ((ground.north - ground.south) * r) / (ground.rows - 1);
      known.push(height != null);
      spots.push(...place(lon, lat, height ?? 0).toArray());
    }
  }
  for (let r = 0; r + 1 < ground.rows; r++) {
    for (let c = 0; c + 1 < ground.columns; c++) {
      const a = r * ground.columns + c, d = a + ground.columns;
      // Where the ground is not known there is a hole, not a guess.
      if ([a, a + 1, d, d + 1].every((i) => known[i])) index.push(a, d, a + 1, a + 1, d, d + 1);
    }
  }
  shape.setAttribute('position', new three.Float32BufferAttribute(spots, 3));
  shape.setIndex(index);
  shape.computeVertexNormals();
  return new three.Mesh(shape, new three.MeshLambertMaterial({ color: css('--rule'), side: three.DoubleSide }));
}

const thread = (points, color) => new three.Line(new three.BufferGeometry().setFromPoints(points), new three.LineBasicMaterial({ color }));

/** A thread that stays visible from near and from far: a tube, and a line one pixel wide. */
function tube(points, radius, color) {
  const path = new three.CurvePath();
  for (let i = 1; i < points.length; i++) path.add(new three.LineCurve3(points[i - 1], points[i]));
  return [new three.Mesh(new three.TubeGeometry(path, Math.max(1, 3 * points.length), radius, 6), new three.MeshBasicMaterial({ color })), thread(points, color)];
}

const partsOf = (shape) => (shape.type === 'MultiLineString' ? shape.coordinates : [shape.coordinates]);

const contours = ({ geometry, properties }, place) => partsOf(geometry).map((part) => thread(part.map(([lon, lat]) => place(lon, lat, properties.heightAmslM + 2)), css('--soft')));

/** A place: a post as high as the longest line in stock is long, and its name. */
function signpost({ geometry, properties }, place, ground) {
  const [lon, lat] = geometry.coordinates, foot = heightAt(ground, lon, lat), top = place(lon, lat, foot + POST_M);
  return [...tube([place(lon, lat, foot), top], 0.4, css('--ink')), name(properties.id, top)];
}

/** A canvas is painted in sRGB; taken for linear its ink would come out grey. */
const inked = (paper) => Object.assign(new three.CanvasTexture(paper), { colorSpace: three.SRGBColorSpace });

function name(words, at) {
  const paper = document.createElement('canvas'), pen = paper.getContext('2d'), font = 'bold 44px "Liberation Sans", Arial, sans-serif';
  pen.font = font;
  paper.width = Math.ceil(pen.measureText(words).width) + 20;
  paper.height = 60;
  Object.assign(pen, { font, fillStyle: `#${css('--page').getHexString()}` });
  pen.fillRect(0, 0, paper.width, paper.height);
  pen.fillStyle = `#${css('--ink').getHexString()}`;
  pen.fillText(words, 10, 46);
  const sign = new three.Sprite(new three.SpriteMaterial({ map: inked(paper), sizeAttenuation: false, depthTest: false }));
  sign.scale.set((0.035 * paper.width) / paper.height, 0.035, 1);
  sign.center.set(0.5, 0);
  sign.position.copy(at);
  return sign;
}

function lines(wire, place, ground) {
  return partsOf(wire.geometry).flatMap((part) => tube(part.map(([lon, lat, z]) => place(lon, lat, z ?? heightAt(ground, lon, lat) + (wire.properties.highestM ?? 10))), WIRE_M, css('--outside')));
}

function heightAt(ground, lon, lat) {
  const c = Math.round((0.5 + offDeg(lon, (ground.west + ground.east) / 2) / (ground.east - ground.west)) * (ground.columns - 1)), r = Math.round(((ground.north - lat) / (ground.north - ground.south)) * (ground.rows - 1));
  return ground.heightsM[Math.max(0, Math.min(ground.rows - 1, r)) * ground.columns + Math.max(0, Math.min(ground.columns - 1, c))] ?? 0;
}

function steer(look) {
  const canvas = look.renderer.domElement;
  canvas.addEventListener('keydown', (event) => {
    const act = { ArrowLeft: () => { look.turn -= 0.1; }, ArrowRight: () => { look.turn += 0.1; }, ArrowUp: () => { look.tilt = Math.min(1.5, look.tilt + 0.08); },
      ArrowDown: () => { look.tilt = Math.max(0.05, look.tilt - 0.08); }, '+': () => { look.far = Math.max(60, look.far / 1.2); }, '-': () => { look.far *= 1.2; } }[event.key];
    if (!act) return;
    act();
    event.preventDefault();
    draw();
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!event.buttons) return;
    look.turn -= event.movementX / 200;
    look.tilt = Math.max(0.05, Math.min(1.5, look.tilt + event.movementY / 200));
    draw();
  });
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    look.far = Math.max(60, look.far * (event.deltaY > 0 ? 1.1 : 0.9));
    draw();
  }, { passive: false });
}

/** Aircraft, line and load where the slider stands, and the whole leg. */
function draw() {
  if (!view?.element.isConnected) return;
  const lift = state.plan?.view.lifts.find((one) => one.number === state.lift), step = lift && state.plan.steps[lift.step];
  const points = state.sheet.section?.points ?? [];
  view.moving.clear();
  let middle = view.place((view.ground.west + view.ground.east) / 2, (view.ground.south + view.ground.north) / 2, heightAt(view.ground, (view.ground.west + view.ground.east) / 2, (view.ground.south + view.ground.north) / 2));
  const path = step?.legs[state.leg]?.path ?? [];
  if (path.length > 1) view.moving.add(...tube(path.map(([lon, lat, z]) => view.place(lon, lat, z)), WAY_M, css('--soft')));
  const here = points[Math.round(state.at * (points.length - 1))];
  if (here?.aircraft != null && path.length > 1) {
    const [lon, lat] = onPath(path, here.s / points.at(-1).s);
    const craft = view.place(lon, lat, here.aircraft), load = view.place(lon, lat, here.load ?? here.aircraft);
    view.moving.add(...tube([craft, load], 0.25, css('--ink')), machine(craft, path, here.s / points.at(-1).s), solid(new three.BoxGeometry(2.5, 2.5, 2.5), load, '--near'));
    middle = craft.clone().lerp(load, 0.5);
  }
  const flat = Math.cos(view.tilt) * view.far;
  view.camera.position.set(middle.x + Math.sin(view.turn) * flat, middle.y + Math.sin(view.tilt) * view.far, middle.z + Math.cos(view.turn) * flat);
  view.camera.lookAt(middle);
  view.renderer.render(view.scene, view.camera);
}

/** Body, boom and rotor, its nose along the way. */
function machine(at, path, part) {
  const [lon, lat] = onPath(path, Math.min(1, part + 0.01)), ahead = view.place(lon, lat, 0), whole = new three.Group(), ink = new three.MeshLambertMaterial({ color: css('--ink') });
  const body = new three.Mesh(new three.SphereGeometry(1.8, 16, 10), ink), boom = new three.Mesh(new three.BoxGeometry(0.7, 0.7, 7), ink);
  const rotor = new three.Mesh(new three.CylinderGeometry(5.5, 5.5, 0.15, 32), new three.MeshBasicMaterial({ color: css('--ink'), transparent: true, opacity: 0.35 }));
  const fin = new three.Mesh(new three.BoxGeometry(0.3, 2.2, 1), ink);
  body.scale.set(0.8, 0.8, 1.5);
  boom.position.z = -5;
  rotor.position.y = 2.1;
  fin.position.set(0, 0.8, -8.2);
  whole.add(body, boom, rotor, fin);
  whole.rotation.y = Math.atan2(ahead.x - at.x, ahead.z - at.z);
  whole.position.copy(at).y += 1.5;
  return whole;
}

/** The place on a path at that part of its length, as longitude and latitude. */
function onPath(path, part) {
  const spots = path.map(([lon, lat]) => view.place(lon, lat, 0)), lengths = spots.map((spot, i) => (i ? spot.distanceTo(spots[i - 1]) : 0));
  let left = part * lengths.reduce((a, b) => a + b, 0), i = 1;
  while (i < path.length - 1 && left > lengths[i]) left -= lengths[i++];
  const share = lengths[i] ? Math.min(1, left / lengths[i]) : 0;
  return [0, 1].map((k) => path[i - 1][k] + share * (path[i][k] - path[i - 1][k]));
}

function solid(shape, at, color) {
  const mesh = new three.Mesh(shape, new three.MeshLambertMaterial({ color: css(color) }));
  mesh.position.copy(at);
  return mesh;
}

listen(() => view && requestAnimationFrame(draw));
