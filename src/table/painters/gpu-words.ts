/**
 * Words on the GPU: each is painted on a small canvas at the screen's density and stands on whole device
 * pixels, so it is as crisp as the browser's own text. Pictures are kept while they are in use.
 */
import { CanvasSource, type Container, Sprite, Texture } from 'pixi.js';
import type { Inks } from '../glyphs/inks.ts';
import type { Point, Rect, Viewport } from '../view/camera.ts';
import { leftOf, measureWords, paintWords } from './lettering.ts';
import { anchorOf, type Words } from './words.ts';

type Picture = { sprite: Sprite; width: number; height: number; used: number };

export type WordsOnGpu = {
  /** Shows these words and no others. */
  show(words: readonly Words[], viewport: Viewport): void;
  clear(): void;
};

/** Pictures kept although not shown. */
const SPARE = 80;
/** More words than this at once could not be read. */
const MOST = 260;

export function holdWords(container: Container, inks: () => Inks, density: () => number): WordsOnGpu {
  const pictures = new Map<string, Picture>();
  const measuring = document.createElement('canvas').getContext('2d')!;
  let round = 0;

  function paint(words: Words): Picture {
    const size = measureWords(measuring, words);
    const scale = density();
    const canvas = document.createElement('canvas');
    canvas.width = Math.ceil(size.width * scale) + 2;
    canvas.height = Math.ceil(size.height * scale) + 2;
    const context = canvas.getContext('2d')!;
    context.setTransform(scale, 0, 0, scale, 1, 1);
    paintWords({ context, inks: inks() }, words, { x: 0, y: size.height / 2 });
    const source = new CanvasSource({ resource: canvas, scaleMode: 'linear' });
    const sprite = new Sprite(new Texture({ source }));
    sprite.scale.set(1 / scale);
    container.addChild(sprite);
    return { sprite, width: size.width, height: size.height, used: round };
  }

  const remove = (key: string, picture: Picture) => {
    picture.sprite.destroy({ texture: true, textureSource: true });
    pictures.delete(key);
  };

  return {
    show(words, viewport) {
      round++;
      const { region } = viewport;
      const scale = density();
      const snap = (value: number) => Math.round(value * scale) / scale;
      let shown = 0;
      for (const one of words) {
        const at = anchorOf(one, viewport);
        if (!near(at, region) || shown >= MOST) continue;
        shown++;
        const key = `${one.text}|${one.px}|${one.bold}|${one.tone}|${one.plate ?? ''}|${one.align}|${repeats(one)}`;
        let picture = pictures.get(key);
        if (picture === undefined) {
          picture = paint(one);
          pictures.set(key, picture);
        }
        picture.used = round;
        picture.sprite.visible = true;
        picture.sprite.position.set(
          snap(at.x - region.x + leftOf(one, picture.width)) - 1 / scale,
          snap(at.y - region.y - picture.height / 2) - 1 / scale,
        );
      }
      for (const [key, picture] of pictures) {
        if (picture.used === round) continue;
        picture.sprite.visible = false;
        if (pictures.size > shown + SPARE) remove(key, picture);
      }
    },
    clear() {
      for (const [key, picture] of pictures) remove(key, picture);
    },
  };
}

/** The same words may stand in two places: the place tells them apart. */
const repeats = (words: Words): string =>
  `${words.x.toFixed(2)},${words.y.toFixed(2)},${words.dx},${words.dy}`;

/** Whether an anchor is close enough to the region for its words to show. */
function near(at: Point, region: Rect): boolean {
  const margin = 160;
  return (
    at.x > region.x - margin &&
    at.y > region.y - margin &&
    at.x < region.x + region.width + margin &&
    at.y < region.y + region.height + margin
  );
}
