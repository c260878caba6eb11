import { crc32, deflateSync } from 'node:zlib';
import { encode } from 'uqr';

/** Grey values row by row, the first row on top; 255 is white. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** A sheet of paper with a code on it. @param at upper left corner of the code's modules [px]. @param step px a module */
export function drawSheet(
  text: string,
  size: { readonly width: number; readonly height: number },
  at: readonly [number, number],
  step: number,
): GreyPicture {
  const { width, height } = size;
  const modules = encode(text, { ecc: 'Q', boostEcc: false, border: 0 }).data;
  const values = new Uint8Array(width * height).fill(232);
  // Lines of a table beside it, as on a sheet.
  for (let y = 40; y < height; y += 46) values.fill(90, y * width, y * width + width);
  const side = modules.length * step;
  const quiet = 4 * step;
  for (let y = at[1] - quiet; y < at[1] + side + quiet; y += 1)
    for (let x = at[0] - quiet; x < at[0] + side + quiet; x += 1) {
      if (x < 0 || y < 0 || x >= width || y >= height) continue;
      const isDark = modules[Math.floor((y - at[1]) / step)]?.[Math.floor((x - at[0]) / step)] === true;
      values[y * width + x] = isDark ? 28 : 232;
    }
  return { width, height, values };
}

/** The picture as a video of ten equal frames, for a browser's fake camera (YUV4MPEG2, 4:2:0). */
export function writeVideo({ width, height, values }: GreyPicture): Uint8Array {
  const colour = new Uint8Array((width * height) / 2).fill(128);
  const frame = [Buffer.from('FRAME\n'), values, colour];
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`);
  return Buffer.concat([head, ...Array.from({ length: 10 }, () => frame).flat()]);
}

/** The picture as a file (PNG, 8 bit grey). */
export function writePng({ width, height, values }: GreyPicture): Buffer {
  const chunk = (type: string, data: Uint8Array) => {
    const body = Buffer.concat([Buffer.from(type), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1) rows.set(values.subarray(y * width, (y + 1) * width), y * (width + 1) + 1);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', new Uint8Array()),
  ]);
}
