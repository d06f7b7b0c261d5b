import { strFromU8, unzipSync } from 'fflate';

/** Triangles of a solid, three corners of three numbers each. [mm] */
export type Triangles = readonly (readonly number[])[];

/** Triangles of a binary STL. @source 3D Systems, StereoLithography Interface Specification (1989) */
export function readStlTriangles(bytes: Uint8Array): Triangles {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return Array.from({ length: view.getUint32(80, true) }, (_, facet) =>
    // The normal comes first, then nine numbers of the corners.
    Array.from({ length: 9 }, (_, i) => view.getFloat32(84 + 50 * facet + 12 + 4 * i, true)),
  );
}

/** Bodies of a 3MF by their names, as they are listed; moves on the bed are left aside. @source 3MF Core Specification 1.3 */
export function readThreeMfBodies(bytes: Uint8Array): Map<string, Triangles> {
  const model = unzipSync(bytes)['3D/3dmodel.model'];
  const text = model ? strFromU8(model) : '';
  const bodies = new Map<string, Triangles>();
  for (const [, name, inner] of text.matchAll(/<object [^>]*?name="([^"]*)"[^>]*>(.*?)<\/object>/gs)) {
    const places = [...inner!.matchAll(/<vertex x="([^"]*)" y="([^"]*)" z="([^"]*)"/g)].map((found) =>
      found.slice(1, 4).map(Number),
    );
    const triangles = [...inner!.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"/g)].map((found) =>
      found.slice(1, 4).flatMap((corner) => places[Number(corner)]!),
    );
    if (triangles.length > 0) bodies.set(name!, triangles);
  }
  return bodies;
}

const BANDS = 400;

/**
 * Height of the highest face above a place, or `null` where there is none.
 *
 * @param triangles - A solid that stands on z = 0. [mm]
 */
export function topOf(triangles: Triangles): (x: number, y: number) => number | null {
  const flat = triangles.filter(([ax, ay, , bx, by, , cx, cy]) => {
    const turn = (bx! - ax!) * (cy! - ay!) - (by! - ay!) * (cx! - ax!);
    return turn > 0; // looks up: walls have no turn, floors turn the other way
  });
  let [low, high] = [Infinity, -Infinity];
  for (const [, a, , , b, , , c] of flat)
    [low, high] = [Math.min(low, a!, b!, c!), Math.max(high, a!, b!, c!)];
  const bandOf = (y: number): number =>
    Math.max(0, Math.min(BANDS - 1, Math.floor(((y - low) / (high - low)) * BANDS)));
  const bands: (readonly number[])[][] = Array.from({ length: BANDS }, () => []);
  for (const triangle of flat) {
    const [, a, , , b, , , c] = triangle;
    const last = bandOf(Math.max(a!, b!, c!));
    for (let band = bandOf(Math.min(a!, b!, c!)); band <= last; band++) bands[band]!.push(triangle);
  }
  return (x, y) => {
    let top: number | null = null;
    for (const [ax, ay, az, bx, by, , cx, cy] of bands[bandOf(y)]!) {
      const turns = [
        (bx! - ax!) * (y - ay!) - (by! - ay!) * (x - ax!),
        (cx! - bx!) * (y - by!) - (cy! - by!) * (x - bx!),
        (ax! - cx!) * (y - cy!) - (ay! - cy!) * (x - cx!),
      ];
      if (turns.every((turn) => turn >= 0)) top = Math.max(top ?? -Infinity, az!);
    }
    return top;
  };
}
