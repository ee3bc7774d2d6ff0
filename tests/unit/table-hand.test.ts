import { beforeEach, describe, expect, test } from 'vitest';
import type { Zoom } from '../../src/table/view/camera.ts';
import { type Gestures, listen } from '../../src/table/view/gestures.ts';

type Done = [what: string, ...numbers: unknown[]];

/** A pad at 20, 60 on the host, 100, 200 on the screen, 400 × 300 large, and what a hand did on it. */
function makePad() {
  const done: Done[] = [];
  /** What stands around the pad, for a test to change. */
  const around = { isFocused: false, pageHeight: 2000, isAtLimit: false };
  const note =
    (what: string) =>
    (...numbers: unknown[]) => {
      done.push([what, ...numbers.slice(1)]);
    };
  const gestures: Gestures = {
    pan: note('pan'),
    zoom: (...numbers) => {
      note('zoom')(...numbers);
      return !around.isAtLimit;
    },
    fit: note('fit'),
    choose: note('choose'),
    point: note('point'),
    begin: note('begin'),
    cancel: note('cancel'),
  };
  const pad = Object.assign(new EventTarget(), {
    setPointerCapture: () => {},
    getBoundingClientRect: () => ({ left: 100, top: 200 }),
    matches: () => around.isFocused,
    ownerDocument: {
      documentElement: {
        clientHeight: 800,
        get scrollHeight() {
          return around.pageHeight;
        },
      },
    },
  });
  const region = { x: 20, y: 60, width: 400, height: 300 };
  const stop = listen(pad as unknown as HTMLElement, 'whole', () => region, gestures);
  const send = (type: string, x: number, y: number, more: object = {}) => {
    const event = Object.assign(new Event(type, { cancelable: true }), {
      clientX: x + 80,
      clientY: y + 140,
      pointerId: 1,
      pointerType: 'mouse',
      button: 0,
      ...more,
    });
    pad.dispatchEvent(event);
    return event;
  };
  /** What was done, without hovering and beginnings. */
  const acts = () => done.filter(([what]) => what !== 'point' && what !== 'begin');
  return { send, done, acts, stop, around };
}

let pad: ReturnType<typeof makePad>;
beforeEach(() => {
  pad = makePad();
});

describe('a tap', () => {
  test('chooses when the finger lifts, not before', () => {
    pad.send('pointerdown', 50, 90);
    expect(pad.acts()).toEqual([]);
    pad.send('pointerup', 50, 90);
    expect(pad.acts()).toEqual([['choose', { x: 50, y: 90 }]]);
  });

  test('may tremble a little', () => {
    pad.send('pointerdown', 50, 90);
    pad.send('pointermove', 54, 92);
    pad.send('pointerup', 54, 92);
    expect(pad.acts()).toEqual([['choose', { x: 54, y: 92 }]]);
  });

  test('that wanders off is none', () => {
    pad.send('pointerdown', 50, 90);
    pad.send('pointermove', 700, 90);
    pad.send('pointerup', 700, 90);
    expect(pad.acts().some(([what]) => what === 'choose')).toBe(false);
  });

  test('that the browser takes for scrolling is none', () => {
    pad.send('pointerdown', 50, 90);
    pad.send('pointercancel', 50, 90);
    pad.send('pointerup', 50, 90);
    expect(pad.acts()).toEqual([]);
  });

  test('with another button is none', () => {
    pad.send('pointerdown', 50, 90, { button: 2 });
    pad.send('pointerup', 50, 90, { button: 2 });
    expect(pad.acts()).toEqual([]);
  });
});

describe('a drag', () => {
  test('moves the drawing as far as the hand, and chooses nothing', () => {
    pad.send('pointerdown', 50, 90);
    pad.send('pointermove', 60, 90);
    pad.send('pointermove', 85, 100);
    pad.send('pointerup', 85, 100);
    const pans = pad.acts().filter(([what]) => what === 'pan') as [string, number, number][];
    expect(pans.reduce((sum, [, dx]) => sum + dx, 0)).toBe(35);
    expect(pans.reduce((sum, [, , dy]) => sum + dy, 0)).toBe(10);
    expect(pad.acts().length).toBe(pans.length);
  });

  test('goes back with Escape and stays there', () => {
    pad.send('pointerdown', 50, 90);
    pad.send('pointermove', 90, 90);
    pad.send('keydown', 0, 0, { key: 'Escape' });
    pad.send('pointermove', 140, 90);
    pad.send('pointerup', 140, 90);
    expect(pad.acts().map(([what]) => what)).toEqual(['pan', 'cancel']);
  });
});

test('two fingers zoom about their middle by how far they part', () => {
  pad.send('pointerdown', 100, 150, { pointerId: 1, pointerType: 'touch' });
  pad.send('pointerdown', 200, 150, { pointerId: 2, pointerType: 'touch' });
  pad.send('pointermove', 300, 150, { pointerId: 2, pointerType: 'touch' });
  pad.send('pointerup', 300, 150, { pointerId: 2, pointerType: 'touch' });
  pad.send('pointerup', 100, 150, { pointerId: 1, pointerType: 'touch' });
  expect(pad.acts()).toEqual([
    ['pan', 50, 0],
    ['zoom', { factor: 2, about: { x: 200, y: 150 } }],
  ]);
});

describe('a drag that the browser takes for scrolling', () => {
  test('is taken back whole, and the finger moves nothing any more', () => {
    const touch = { pointerType: 'touch' };
    pad.send('pointerdown', 50, 90, touch);
    pad.send('pointermove', 90, 90, touch);
    pad.send('pointercancel', 90, 90, touch);
    pad.send('pointermove', 140, 90, touch);
    expect(pad.acts().map(([what]) => what)).toEqual(['pan', 'cancel']);
    pad.send('pointerdown', 50, 90, touch);
    pad.send('pointerup', 50, 90, touch);
    expect(pad.acts().at(-1)?.[0]).toBe('choose');
  });

  test('is taken back once, though two fingers lie there', () => {
    for (const pointerId of [1, 2]) pad.send('pointerdown', 100 * pointerId, 150, { pointerId });
    pad.send('pointermove', 300, 150, { pointerId: 2 });
    for (const pointerId of [1, 2]) pad.send('pointercancel', 0, 0, { pointerId });
    expect(pad.acts().map(([what]) => what)).toEqual(['pan', 'zoom', 'cancel']);
  });
});

describe('a wheel', () => {
  const up = { deltaX: 0, deltaY: -100, deltaMode: 0 };

  test('scrolls the page, where it scrolls', () => {
    expect(pad.send('wheel', 70, 100, up).defaultPrevented).toBe(false);
    expect(pad.acts()).toEqual([]);
  });

  test.each([
    ['with Ctrl', { ctrlKey: true }, {}],
    ['with ⌘', { metaKey: true }, {}],
    ['while the drawing has the focus', {}, { isFocused: true }],
    ['where no page scrolls', {}, { pageHeight: 800 }],
  ])('%s zooms about the pointer, towards it when turned up', (_name, keys, around) => {
    Object.assign(pad.around, around);
    const event = pad.send('wheel', 70, 100, { ...up, ...keys });
    const [[what, zoom]] = pad.acts() as [[string, Zoom]];
    expect([what, zoom.about]).toEqual(['zoom', { x: 70, y: 100 }]);
    expect(zoom.factor).toBeGreaterThan(1);
    expect(event.defaultPrevented).toBe(true);
  });

  test('scrolls the page on, where it is zoomed as far as it goes; with Ctrl the page is not zoomed either', () => {
    Object.assign(pad.around, { isFocused: true, isAtLimit: true });
    expect(pad.send('wheel', 70, 100, up).defaultPrevented).toBe(false);
    expect(pad.send('wheel', 70, 100, { ...up, ctrlKey: true }).defaultPrevented).toBe(true);
  });

  test('moves when it turns sideways or with Shift', () => {
    pad.around.isFocused = true;
    pad.send('wheel', 70, 100, { deltaX: 40, deltaY: 3, deltaMode: 0 });
    pad.send('wheel', 70, 100, { deltaX: 0, deltaY: 25, deltaMode: 0, shiftKey: true });
    expect(pad.acts()).toEqual([
      ['pan', -40, 0],
      ['pan', -25, 0],
    ]);
  });
});

describe('keys', () => {
  test.each([
    ['ArrowLeft', ['pan', 72, 0]],
    ['ArrowDown', ['pan', 0, -72]],
    ['+', ['zoom', { factor: 1.25, about: { x: 220, y: 210 } }]],
    ['-', ['zoom', { factor: 0.8, about: { x: 220, y: 210 } }]],
    ['0', ['fit']],
  ])('%s', (key, act) => {
    expect(pad.send('keydown', 0, 0, { key }).defaultPrevented).toBe(true);
    expect(pad.acts()).toEqual([act]);
  });

  test('that mean nothing here go on to the page, and so do shortcuts', () => {
    expect(pad.send('keydown', 0, 0, { key: 'Tab' }).defaultPrevented).toBe(false);
    expect(pad.send('keydown', 0, 0, { key: '+', ctrlKey: true }).defaultPrevented).toBe(false);
    expect(pad.acts()).toEqual([]);
  });
});

test('a pointer points, and leaving points at nothing', () => {
  pad.send('pointermove', 70, 100);
  pad.send('pointerleave', 0, 0);
  expect(pad.done).toEqual([
    ['point', { x: 70, y: 100 }],
    ['point', null],
  ]);
});

test('after it stopped listening nothing happens', () => {
  pad.stop();
  pad.send('pointerdown', 50, 90);
  pad.send('pointerup', 50, 90);
  expect(pad.done).toEqual([]);
});
