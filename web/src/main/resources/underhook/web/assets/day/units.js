// How numbers of the server are written. Nothing is worked out here but how long it is until a time.
import { state, now } from './state.js';

/** Local time of the job. The server writes it with the job's offset, so no zone is applied here. */
export const clock = (iso) => (iso ? iso.slice(11, 16) : '–');

/** A time of a device, told in the job's zone by the offset that the server's own times carry. */
export function local(iso) {
  if (!iso) return '–';
  const offset = /([+-])(\d\d):(\d\d)$/.exec(state.day?.lifts?.[0]?.plannedAt ?? '');
  const ms = offset ? (offset[1] === '-' ? -1 : 1) * (Number(offset[2]) * 60 + Number(offset[3])) * 60000 : 0;
  return new Date(Date.parse(iso) + ms).toISOString().slice(11, 19);
}

export const kg = (value) => (value == null ? '–' : `${Math.round(value)} kg`);

/** A line by its length: one typed in feet is no round number of metres. */
export const line = (m) => `${Number(m.toFixed(1))} m`;

// What is just under half a degree by noise is half a degree, on the card too.
const NOISE = 1e-6;

/** A true bearing, shown as the reader wants it: TRUE, or MAG with the job's variation; rounded once, at the end. */
export function bearing(trueDeg) {
  if (trueDeg == null) return '–';
  const magnetic = state.reader.north === 'mag' && state.day?.magneticVariationDeg != null;
  const turned = ((Math.round(trueDeg - (magnetic ? state.day.magneticVariationDeg : 0) + NOISE) % 360) + 360) % 360;
  return `${String(turned === 0 ? 360 : turned).padStart(3, '0')}° ${magnetic ? 'MAG' : 'TRUE'}`;
}

export const distance = (m) => (m < 1000 ? `${Math.round(m)} m` : `${(m / 1000).toFixed(1)} km`);

/** Minutes and seconds until a time; the time has passed at 0. */
export function until(iso) {
  const s = Math.floor((Date.parse(iso) - now()) / 1000);
  if (s <= 0) return { s, text: '0:00' };
  const h = Math.floor(s / 3600), m = Math.floor(s / 60) % 60;
  return { s, text: h ? `${h} h ${String(m).padStart(2, '0')}` : `${m}:${String(s % 60).padStart(2, '0')}` };
}

/** How long ago, in whole minutes. */
export const ago = (ms) => Math.max(0, Math.floor((Date.now() - ms) / 60000));
