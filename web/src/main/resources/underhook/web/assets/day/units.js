// How numbers of the server are written. Nothing is worked out here but how long it is until a time.
import { offsetAt, offsetIn, offsetMs, shortOffset } from '../offsets.js';
import { HAIR, KG_PER_LB, M_PER_FT, M_PER_NMI } from '../quantities.js';
import { state, now } from './state.js';

/** On the day of a clock change with its offset, as on paper: one hour of it is there twice, or not at all. */
const told = (offset) => (state.day?.offsets?.length > 1 ? ` ${shortOffset(offset)}` : '');

/** Local time of the job. The server writes it with the job's offset, so no zone is applied here. */
export const clock = (iso) => (iso ? `${iso.slice(11, 16)}${told(offsetIn(iso))}` : '–');

/** A time of a device, told in the job's zone; by the offset that the server's own times carry where the browser does not know the zone. */
export function local(iso, seconds = true) {
  if (!iso) return '–';
  const offset = offsetAt(state.day?.zone, Date.parse(iso)) ?? offsetIn(state.day?.lifts?.[0]?.plannedAt ?? '');
  return `${new Date(Date.parse(iso) + offsetMs(offset)).toISOString().slice(11, seconds ? 19 : 16)}${told(offset)}`;
}

// @source SP811 appendix B: exact definition of the pound-force
const N_PER_LBF = 4.4482216152605;

const ROUND = { up: (value) => Math.ceil(value - HAIR), down: (value) => Math.floor(value + HAIR), near: Math.round };

/** Whether this reader wants pounds and feet; the server counts in kilograms and metres. */
export const us = () => state.reader.units === 'us';

/** A mass, rounded to the side that is safe where the caller names one ('up' or 'down'). */
export const mass = (value, side = 'near') => (value == null ? '–' : us() ? `${ROUND[side](value / KG_PER_LB)} lb` : `${ROUND[side](value)} kg`);

/** A length; the server's decimals stay. */
export const length = (m, side = 'near') => (us() ? `${ROUND[side](m / M_PER_FT)} ft` : `${m} m`);

/** A line by its length: one typed in feet is no round number of metres, and the other way round. */
export const line = (m) => (us() ? `${Number((m / M_PER_FT).toFixed(1))} ft` : `${Number(m.toFixed(1))} m`);

export const pull = (n) => (us() ? `${ROUND.up(n / N_PER_LBF)} lbf` : `${n} N`);

/** Units of what is typed on this device. */
export const massUnit = () => (us() ? 'lb' : 'kg');
export const lengthUnit = () => (us() ? 'ft' : 'm');

/** What was typed, in the server's kilograms, to the gram: a pound is no whole number of them. */
export const typedKg = (text) => Math.round(Number(text) * (us() ? KG_PER_LB : 1) * 1000) / 1000;

/** The same in whole kilograms or metres, as a report has them. */
export const wholeKg = (text, side) => ROUND[side](typedKg(text));
export const wholeM = (text, side) => ROUND[side](Number(text) * (us() ? M_PER_FT : 1));

/** The most that may be typed where the server reads so many metres or kilograms. */
export const mostTyped = (value, unit) => (!us() ? value : Math.floor(value / (unit === 'kg' ? KG_PER_LB : M_PER_FT)));

// What is just under half a degree by noise is half a degree, on the card too.
const NOISE = 1e-6;

const variation = () => (state.reader.north === 'mag' ? state.day?.magneticVariationDeg ?? null : null);

/** Which north the reader's bearings count from. */
export const north = () => (variation() === null ? 'TRUE' : 'MAG');

/** A true bearing from the reader's north, not rounded: what is drawn beside numbers points as they say. */
export const turned = (trueDeg) => trueDeg - (variation() ?? 0);

/** A true bearing, shown as the reader wants it: TRUE, or MAG with the job's variation; rounded once, at the end. */
export function bearing(trueDeg) {
  if (trueDeg == null) return '–';
  const shown = ((Math.round(turned(trueDeg) + NOISE) % 360) + 360) % 360;
  return `${String(shown === 0 ? 360 : shown).padStart(3, '0')}° ${north()}`;
}

/** A bearing typed from the reader's north, in whole degrees TRUE as the server reads it; half goes down, so that it is shown as typed. */
export const trueDegrees = (text) => ((Math.ceil(Number(text) + (variation() ?? 0) - 0.5 - NOISE) % 360) + 360) % 360;

export const distance = (m) => (us() ? `${(m / M_PER_NMI).toFixed(2)} NM` : m < 1000 ? `${Math.round(m)} m` : `${(m / 1000).toFixed(1)} km`);

/** A stretch of a way, no shorter than it is. */
export function stretch(fromM, toM) {
  const [tenthM, unit] = us() ? [M_PER_NMI / 10, 'NM'] : [100, 'km'];
  return `${(ROUND.down(fromM / tenthM) / 10).toFixed(1)}–${(ROUND.up(toM / tenthM) / 10).toFixed(1)} ${unit}`;
}

/** Minutes and seconds until a time; the time has passed at 0. */
export function until(iso) {
  const s = Math.floor((Date.parse(iso) - now()) / 1000);
  if (s <= 0) return { s, text: '0:00' };
  const h = Math.floor(s / 3600), m = Math.floor(s / 60) % 60;
  return { s, text: h ? `${h} h ${String(m).padStart(2, '0')}` : `${m}:${String(s % 60).padStart(2, '0')}` };
}

/** How long ago, in whole minutes. */
export const ago = (ms) => Math.max(0, Math.floor((Date.now() - ms) / 60000));
