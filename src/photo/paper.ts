/** A canvas as wide as it is shown, in pixels of the screen. */
export type Paper = { context: CanvasRenderingContext2D; width: number; height: number };

export function paperOf(canvas: HTMLCanvasElement): Paper | null {
  const { clientWidth: width, clientHeight: height } = canvas;
  const context = canvas.getContext('2d');
  if (!context || width === 0 || height === 0) return null;
  const density = Math.min(3, devicePixelRatio || 1);
  const [wide, tall] = [Math.round(width * density), Math.round(height * density)];
  if (canvas.width !== wide || canvas.height !== tall) {
    canvas.width = wide;
    canvas.height = tall;
  }
  context.setTransform(density, 0, 0, density, 0, 0);
  context.clearRect(0, 0, width, height);
  return { context, width, height };
}

/** Signs on a photo must be seen on any colour: a light line in a dark one. */
const light = '#ffffff';
const dark = '#14181b';

/** Draws the path twice: wide and dark, then narrow and light. */
export function outlined(context: CanvasRenderingContext2D, wide: number, draw: () => void): void {
  for (const [colour, width] of [
    [dark, wide + 3],
    [light, wide],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.beginPath();
    draw();
    context.stroke();
  }
}
