/** Surface of a part in triangles that share their corners; outside is where they turn against the clock. */
export interface Mesh {
  /** x, y and z of each corner. [mm], n = 3 × corners */
  readonly positionsMm: Float32Array;
  /** Corners of each triangle. n = 3 × triangles */
  readonly triangles: Uint32Array;
}

/** One body of a part, as it lies on the printer's bed: z up, lowest at z = 0. */
export interface Solid {
  /** Lower-case words joined by `-`; also its file name. */
  readonly name: string;
  /** `#rrggbb`; plain material when left out. */
  readonly colour?: string;
  readonly mesh: Mesh;
}
