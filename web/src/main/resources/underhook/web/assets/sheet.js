// One lift, open in place: section, rose and limits side by side, the reasons in words.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { actions } from './actions.js';
import { badge } from './marks.js';
import { section } from './section.js';
import { rose, roseWords } from './rose.js';
import { how } from './how.js';
import { codeWords, said, t } from './words.js';
import * as u from './units.js';

const carrying = (leg) => (leg.carrying.length ? leg.carrying.join(' + ') : t('leg.empty'));

export function sheet(step, lift) {
  const parts = state.sheet.lift === lift.number ? state.sheet : {};
  return html`<article class="sheet" aria-label=${t('sheet.title', { lift: lift.number, loads: step.loads.join(' + ') })}>
    ${flown(step, lift)}
    <div class="charts">
      <figure class="section-figure">
        <figcaption>${t('section.title')}</figcaption>
        <div class="legs" role="group" aria-label=${t('leg.choose')}>${step.legs.map((leg, index) => html`
          <button aria-pressed=${state.leg === index} @click=${() => actions.chooseLeg(index)}>
            ${carrying(leg)}: ${leg.from} → ${leg.to}</button>`)}</div>
        ${parts.section ? section(parts.section, step.legs[state.leg]) : waiting(parts.sectionFault)}
      </figure>
      <figure class="rose-figure">
        <figcaption>${t('rose.title', { place: step.drops[0]?.place ?? '' })}</figcaption>
        ${parts.rose ? rose(parts.rose) : waiting(parts.roseFault)}
      </figure>
      <div class="limits">
        <h3>${t('limits.title')}</h3>
        ${parts.limits ? limits(parts.limits, lift) : waiting(parts.limitsFault)}
      </div>
    <div class="reasons">
      <h3>${t('reasons.title')}</h3>
      ${step.drops.map((drop) => html`<p><b>${drop.load}</b> ${t('way.words', {
        place: drop.place, from: u.bearing(drop.approachFromTrueDeg), out: u.bearing(drop.departureTrackTrueDeg) })}</p>
        <ul>${drop.reasons.map((reason) => html`<li>${said(reason)}</li>`)}</ul>`)}
      ${step.because ? html`<p>${t('because')} ${said(step.because)}</p>` : nothing}
      ${parts.rose ? roseWords(parts.rose) : nothing}
    </div></div>
    <p class="acts">
      <button @click=${() => actions.openMove(lift.number)}>${t('move.open')}</button>
      <button @click=${() => actions.openWhatIf(lift.number)}>${t('whatif.open')}</button>
      <button @click=${() => actions.show('look')}>${t('look.open')}</button>
    </p>
  </article>`;
}

const waiting = (fault) => html`<p class="waiting">${fault ?? t('waiting')}</p>`;

/** What is flown by, and nothing else, in large figures. */
function flown(step, lift) {
  const out = step.legs[0];
  const pair = (name, value) => html`<div><dt>${name}</dt><dd class=${value.length > 9 ? 'long' : ''}>${value}</dd></div>`;
  return html`<dl class="flown">
    ${pair(t('flown.hooked'), u.clock(step.hookedAt))}
    ${pair(t('flown.mass'), u.mass(step.massOnHookKg, 'up'))}
    ${pair(t('flown.line'), u.length(step.lineLengthM))}
    ${pair(t('flown.fuelMax'), u.mass(lift.mostReadKg, 'down'))}
    ${pair(t('flown.fuelAt'), u.mass(step.fuelAtHookKg, 'down'))}
    ${pair(t('flown.leg'), `${u.distance(out?.distanceM)}, ${u.minutes(out?.minutes)}`)}
    ${step.ballastKg ? pair(t('flown.ballast'), u.mass(step.ballastKg, 'up')) : nothing}
  </dl>`;
}

function limits(rows, lift) {
  return html`<table><thead><tr><th scope="col">${t('limits.what')}</th><th scope="col">${t('limits.value')}</th><th scope="col">${t('limits.state')}</th></tr></thead>
    <tbody>${rows.map((row) => html`<tr class=${row.governing ? 'governing' : ''}>
      <th scope="row">${codeWords(row.code)}${row.governing ? html`<em>${t('limits.governing')}</em>` : nothing}</th>
      <td><button class="number" aria-haspopup="dialog" @click=${() => actions.open(() => how(row, lift))}>${u.withUnit(row.value, row.unit, 'up')}</button>
        <small>${t('limits.of', { limit: u.withUnit(row.limit, row.unit, 'down') })}</small></td>
      <td>${badge(row.state)}</td></tr>`)}</tbody></table>
    <p class="hint">${t('limits.hint')}</p>`;
}
