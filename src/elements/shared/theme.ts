import { isServer } from 'lit';
import type { ReactiveController } from 'lit';
import { Scope } from '../scope.js';
import { chosenLook, looks } from '../../sheet/looks.js';
import { choiceWords } from '../../study/choices.js';
import type { RingdownElement } from './element.js';
import type { DrawTheme } from '../../draw/types.js';

type Rgba = readonly [number, number, number, number];

let painter: CanvasRenderingContext2D | null = null;

/** Any CSS colour as bytes, by painting one pixel: computed styles speak in many notations, canvases must not. */
function rgbaOf(css: string): Rgba {
  painter ??= Object.assign(document.createElement('canvas'), { width: 1, height: 1 }).getContext('2d', {
    willReadFrequently: true,
  });
  if (!painter) return [0, 0, 0, 255];
  painter.clearRect(0, 0, 1, 1);
  painter.fillStyle = '#000';
  painter.fillStyle = css;
  painter.fillRect(0, 0, 1, 1);
  const [r, g, b, a] = painter.getImageData(0, 0, 1, 1).data;
  return [r, g, b, a];
}

/** A colour over an opaque one. */
function over([r, g, b, a]: Rgba, below: Rgba): Rgba {
  const mix = (top: number, low: number): number => Math.round((top * a + low * (255 - a)) / 255);
  return [mix(r, below[0]), mix(g, below[1]), mix(b, below[2]), 255];
}

const cssOf = ([r, g, b]: Rgba): string => `rgb(${r}, ${g}, ${b})`;

/** Relative luminance (WCAG 2.2, from IEC 61966-2-1). */
function luminance([r, g, b]: Rgba): number {
  const linear = (byte: number): number => {
    const part = byte / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

/**
 * The colours that a picture takes from the page: text is the page's text, the ground is what is behind the element, the
 * rest comes from custom properties. Sets the state `dark` by what is seen, not by what the system prefers, so that
 * `light-dark()` inside follows a page that is dark by its own means.
 */
export class ThemeController implements ReactiveController {
  readonly #host: RingdownElement;
  readonly #changed: () => void;
  #scope: Scope | null = null;
  #theme: DrawTheme | null = null;
  /** Size of the text, which pictures follow. */
  #textSize = '';
  #printing = false;

  constructor(host: RingdownElement, changed: () => void) {
    this.#host = host;
    this.#changed = changed;
    host.addController(this);
  }

  get printing(): boolean {
    return this.#printing;
  }

  hostConnected(): void {
    if (isServer) return;
    const scope = (this.#scope = new Scope());
    const settle = scope.debounce(30);
    const later = (): void => settle(() => this.refresh());
    for (const query of [
      '(prefers-color-scheme: dark)',
      '(forced-colors: active)',
      '(prefers-contrast: more)',
    ])
      scope.onMedia(query, later);
    const attributes = {
      attributes: true,
      attributeFilter: ['class', 'style', 'data-theme', 'data-mode', 'lang'],
    };
    for (const node of new Set([document.documentElement, document.body, this.#host.parentElement]))
      if (node) scope.observeMutations(node, attributes, later);
    scope.observeMutations(this.#host, { attributes: true, attributeFilter: ['class', 'style'] }, later);
    if (document.readyState !== 'complete') scope.listen(window, 'load', later);
    const print = (printing: boolean) => (): void => {
      this.#printing = printing;
      this.refresh();
    };
    scope.listen(window, 'beforeprint', print(true));
    scope.listen(window, 'afterprint', print(false));
  }

  hostDisconnected(): void {
    this.#scope?.dispose();
    this.#scope = null;
    this.#theme = null;
  }

  /** Styles depend on the state `dark` also where nothing is drawn. */
  hostUpdated(): void {
    if (!isServer && this.#host.isConnected) this.#theme ??= this.#read();
  }

  get theme(): DrawTheme {
    return (this.#theme ??= this.#read());
  }

  refresh(): void {
    if (!this.#host.isConnected) return;
    const next = this.#read();
    const style = getComputedStyle(this.#host);
    const textSize = `${style.fontSize} ${style.getPropertyValue('--ringdown-text-scale')}`;
    if (textSize === this.#textSize && JSON.stringify(next) === JSON.stringify(this.#theme)) return;
    this.#textSize = textSize;
    this.#theme = next;
    this.#changed();
  }

  #read(): DrawTheme {
    const host = this.#host;
    const style = getComputedStyle(host);
    const { fontFamily } = style;
    if (this.#printing) return { ...looks.paper, fontFamily };
    const text = rgbaOf(style.getPropertyValue('--ringdown-text') || style.color);
    const behind = this.#ground();
    const lightText = luminance(text) > 0.35;
    const dark = behind ? luminance(behind) < luminance(text) : lightText;
    host.setState('dark', dark);
    const ground: Rgba = behind ?? (dark ? [18, 18, 18, 255] : [255, 255, 255, 255]);
    const token = (name: string): string => cssOf(over(rgbaOf(this.#probe(name)), ground));
    const wanted = style.getPropertyValue('--ringdown-scale').trim();
    const look: DrawTheme = {
      dark,
      background: cssOf(ground),
      text: token('--_text'),
      faint: token('--_faint'),
      line: token('--_line'),
      accent: token('--_accent'),
      fontFamily,
      scale: dark ? 'dusk' : 'dawn',
    };
    return chosenLook(
      look,
      choiceWords.scale.find((name) => name === wanted),
    );
  }

  /** A custom property is text until something is painted with it; a probe in the shadow root is. */
  #probe(name: string): string {
    const root = this.#host.renderRoot as ShadowRoot | undefined;
    if (!root) return 'CanvasText';
    let probe = root.querySelector<HTMLElement>('.probe');
    if (!probe) {
      probe = document.createElement('span');
      probe.className = 'probe';
      probe.hidden = true;
      root.append(probe);
    }
    probe.style.color = `var(${name})`;
    return getComputedStyle(probe).color;
  }

  /** What is behind the element: its own ground, or the nearest that is painted; null where nothing is. */
  #ground(): Rgba | null {
    const layers: Rgba[] = [];
    for (let node: Element | null = this.#host; node; node = parentOf(node)) {
      const colour = rgbaOf(getComputedStyle(node).backgroundColor);
      if (colour[3] === 0) continue;
      layers.push(colour);
      if (colour[3] === 255) return layers.reduceRight((below, layer) => over(layer, below));
    }
    return null;
  }
}

/** The next element outwards, through slots and shadow roots, as it is painted. */
function parentOf(node: Element): Element | null {
  if (node.assignedSlot) return node.assignedSlot;
  if (node.parentElement) return node.parentElement;
  const root = node.getRootNode();
  return root instanceof ShadowRoot ? root.host : null;
}
