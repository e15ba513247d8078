// Hand signals as line drawings, seen as the pilot sees them; positions after OSHA 1926.551 figure N-1
// and WAC 296-829, drawings our own. Arms run from the shoulder over the elbow to the hand, in tenths of
// the figure's height, x to the right, y up, from the middle between the shoulders.
import { html, svg } from '/lib/lit/lit-html.js';
import { t } from './words.js';

const SIGNALS = [
  ['hold', '-9,0 -15,15 -11,31', '9,0 15,15 11,31', []],
  ['release', '-9,0 -1,-5 15,-13', '9,0 19,-9 28,-20', ['13,6 26,-3 32,-12']],
  ['up', '-9,0 -20,0 -31,0', '9,0 20,0 31,0', ['-29,5 -28,15 -23,24', '29,5 28,15 23,24']],
  ['down', '-9,0 -20,0 -31,0', '9,0 20,0 31,0', ['-29,-5 -28,-15 -23,-24', '29,-5 28,-15 23,-24']],
  ['this', '-9,0 -17,12 -9,26', '9,0 20,0 31,0', ['-27,4 -22,23 -6,33 6,32']],
  ['other', '-9,0 -20,0 -31,0', '9,0 17,12 9,26', ['27,4 22,23 6,33 -6,32']],
  ['forward', '-9,0 -20,1 -18,15', '9,0 20,1 18,15', ['-32,19 -22,17', '32,19 22,17']],
  ['back', '-9,0 -19,-2 -17,14', '9,0 19,-2 17,14', ['-20,16 -31,20', '20,16 31,20']],
  ['takeoff', '-9,0 -17,-11 -5,-18', '9,0 14,15 13,30', ['20,18 20,33']],
  ['land', '-9,0 -7,-12 8,-25', '9,0 7,-12 -8,-25', []],
];

const figure = ([, left, right, motions]) => svg`<svg viewBox="-40 -45 80 92" aria-hidden="true">
  <g transform="scale(1 -1)"><circle cx="0" cy="10" r="6"/><path d="M-9 0H9L6-26H-6Z"/><path d="M-4-26-6-44M4-26 6-44"/>
  <polyline points=${left}/><polyline points=${right}/>
  ${motions.map((points) => {
    const all = points.split(' ').map((one) => one.split(',').map(Number));
    const [x, y] = all.at(-1), [px, py] = all.at(-2);
    const a = Math.atan2(y - py, x - px);
    const barb = (turn) => `${x - 6 * Math.cos(a + turn)},${y - 6 * Math.sin(a + turn)}`;
    return svg`<polyline class="motion" points=${points}/><polyline class="motion tip" points=${`${barb(0.5)} ${x},${y} ${barb(-0.5)}`}/>`;
  })}</g></svg>`;

/** Every signal with its name and how it is given. */
export const signals = () => html`<ul class="signals">${SIGNALS.map((one) => html`<li>${figure(one)}<p><b>${t(`signal.${one[0]}`)}</b> ${t(`signal.${one[0]}.how`)}</p></li>`)}</ul>`;
