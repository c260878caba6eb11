/** What the tests use of the package dxf 5.3.1, which brings no types. */
declare module 'dxf' {
  interface DxfEntity {
    readonly type: string;
    readonly layer: string;
    readonly handle?: string;
    readonly block?: string;
    readonly x?: number;
    readonly y?: number;
    readonly r?: number;
    readonly rotation?: number;
    readonly string?: string;
    readonly tag?: string;
    readonly text?: { readonly string: string };
    readonly closed?: boolean;
    readonly vertices?: readonly { readonly x: number; readonly y: number }[];
    readonly start?: { readonly x: number; readonly y: number };
    readonly end?: { readonly x: number; readonly y: number };
  }
  interface DxfFile {
    readonly header: Readonly<Record<string, unknown>>;
    readonly tables: { readonly layers: Readonly<Record<string, unknown>> };
    readonly blocks: readonly { readonly name: string; readonly entities: readonly DxfEntity[] }[];
    readonly entities: readonly DxfEntity[];
  }
  export function parseString(text: string): DxfFile;
}
