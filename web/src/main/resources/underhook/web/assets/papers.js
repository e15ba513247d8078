// Everything that can be taken away: papers to print, files to download, the job as one file.
import { html, nothing } from '/lib/lit/lit-html.js';
import { state } from './state.js';
import { api } from './api.js';
import { t } from './words.js';
import { stamp } from './units.js';

const FILES = ['cards.pdf', 'plan.json', 'plan.geojson', 'plan.gpx', 'plan.kml', 'plan.gpkg', 'loads.csv', 'findings.csv'];

export const papers = () => html`<section class="papers" aria-label=${t('panel.papers')}>
  <h2>${t('papers.title')}</h2>
  ${state.plan ? html`
    ${state.job?.plan?.stale ? html`<p class="stale">${t('plan.stale')}</p>` : nothing}
    <p><a class="button main" href=${api.fileUrl(state.jobId, 'cards.pdf')} target="_blank" rel="noopener">${t('papers.print')}</a>
      <button @click=${() => print()}>${t('papers.screen')}</button></p>
    <p>${t('papers.version', { id: state.plan.planId, at: stamp(state.plan.plannedAt) })}</p>
    <h3>${t('papers.files')}</h3>
    <ul class="files">${(state.plan.view.files ?? FILES).map((name) => html`<li><a class="button" href=${api.fileUrl(state.jobId, name)}?save=1 download=${name}>${name}</a> ${t(`file.${name}`)}</li>`)}</ul>`
    : html`<p>${t('plan.none')}</p>`}
  <h3>${t('papers.handover')}</h3>
  <p>${t('papers.handoverWords')}</p>
  <p><a class="button" href=${api.handoverUrl(state.jobId)} download>${t('papers.handover')}</a></p>
</section>`;
