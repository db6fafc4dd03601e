import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { orbitLimits } from '../../draw/orbit.js';
import type { OrbitView } from '../../draw/types.js';
import type { Speaker } from '../../words/index.js';

const degrees = 180 / Math.PI;

/** The keyboard's way to turn a picture: three sliders, each saying its value in words. */
export function turningControls(
  speaker: Speaker,
  orbit: OrbitView,
  turned: (orbit: OrbitView) => void,
): TemplateResult {
  const slider = (
    name: string,
    value: number,
    range: readonly [number, number],
    step: number,
    text: string,
    changed: (value: number) => void,
  ): TemplateResult =>
    html`<label
      ><span>${speaker.view(name)}</span
      ><input
        type="range"
        min=${range[0]}
        max=${range[1]}
        step=${step}
        .value=${live(String(value))}
        aria-valuetext=${text}
        @input=${(event: Event) => changed((event.target as HTMLInputElement).valueAsNumber)}
    /></label>`;
  const turn = Math.round(orbit.azimuthRadians * degrees);
  const tilt = Math.round(orbit.elevationRadians * degrees);
  const [lowest, highest] = orbitLimits.elevationRadians;
  const tilts = [Math.round(lowest * degrees), Math.round(highest * degrees)] as const;
  return html`<details class="turning screen-only" part="turning">
    <summary>${speaker.view('turn-and-tilt')}</summary>
    <div>
      ${slider('turn', turn, [-180, 180], 5, speaker.view('degrees', { degrees: turn }), (value) =>
        turned({ ...orbit, azimuthRadians: value / degrees }),
      )}
      ${slider('tilt', tilt, tilts, 2, speaker.view('degrees', { degrees: tilt }), (value) =>
        turned({ ...orbit, elevationRadians: value / degrees }),
      )}
      ${slider(
        'nearer',
        orbit.zoom,
        orbitLimits.zoom,
        0.1,
        speaker.view('times', { factor: orbit.zoom }),
        (value) => turned({ ...orbit, zoom: value }),
      )}
    </div>
  </details>`;
}

/** Pictures that are turned: their buttons and sliders. */
export const turningStyles = css`
  .views {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0.25rem;
    font-size: 0.82em;
  }

  .views button {
    padding: 0.15em 0.65em;
  }

  .turning div {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr));
    gap: 0.25rem 1.25rem;
    padding-block: 0.5rem;
  }

  .turning label {
    display: grid;
    grid-template-columns: 5.5em minmax(0, 1fr);
    align-items: center;
    gap: 0.6em;
  }

  .flat {
    margin: 0;
    font-size: 0.8em;
    color: var(--_faint);
  }
`;
