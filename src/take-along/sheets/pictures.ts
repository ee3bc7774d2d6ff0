/** The drawing on paper, made by the rooms that draw. */
import type { Snapshot } from '../../state/snapshot.ts';

/** What a picture may take of a page, in CSS px. */
export type Room = { width: number; height: number };

type Printed = {
  /** An element of its own each time, drawn for its room: words have the size of those around it. */
  element(room: Room): SVGElement;
  /** As a document with a title. */
  svg(title: string): string;
  png(widthPx: number): Promise<Blob>;
};

/** `rounds`: both rounds joined. `ring`: the foundation as a ring diagram. All as made, wherever the walk stands. */
export type DrawForPrint = (snapshot: Snapshot, which: 'rounds' | 'ring') => Printed;

export type Drawn = Omit<Printed, 'element'> & {
  /** @param height mm at most; all the width of either paper */
  onPage(height: number): SVGElement;
};

const px = (mm: number): number => (mm * 96) / 25.4;

/** mm that both papers hold within margins of 12 mm. */
const WIDTH = 186;

/** Draws anew only where the making or the hand is another. */
export function openPictures(): (draw: DrawForPrint, snapshot: Snapshot, which: 'rounds' | 'ring') => Drawn {
  let last: { from: readonly unknown[]; drawn: Drawn } | null = null;
  return (draw, snapshot, which) => {
    const from = [draw, snapshot.making, snapshot.settings.hand, which];
    if (last?.from.every((part, i) => part === from[i])) return last.drawn;
    const { element, svg, png } = draw(snapshot, which);
    const elements = new Map<number, SVGElement>();
    const onPage = (height: number): SVGElement => {
      const made = elements.get(height) ?? element({ width: px(WIDTH), height: px(height) });
      elements.set(height, made);
      return made;
    };
    last = { from, drawn: { svg, png, onPage } };
    return last.drawn;
  };
}
