/** A picture as a PNG file. */
import { crc32, deflateSync } from 'node:zlib';

type Pixels = { width: number; height: number; data: Uint8ClampedArray };

/** Unfiltered rows, eight bits a channel (W3C, Portable Network Graphics). */
export function pngOf({ width, height, data }: Pixels): Buffer {
  const rows = Buffer.alloc(height * (1 + width * 4));
  for (let y = 0; y < height; y++)
    Buffer.from(data.buffer, data.byteOffset + y * width * 4, width * 4).copy(rows, y * (1 + width * 4) + 1);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 6, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, content: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), content]);
  const out = Buffer.alloc(8 + named.length);
  out.writeUInt32BE(content.length, 0);
  named.copy(out, 4);
  out.writeUInt32BE(crc32(named), 4 + named.length);
  return out;
}
