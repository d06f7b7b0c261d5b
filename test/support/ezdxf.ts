import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Its number for millimetres. */
export const MILLIMETRES = 4;

/** What it found in a drawing: faults, unit, arcs, and the area within closed lines. [mm²] */
export interface EzdxfReport {
  readonly errors: number;
  readonly units: number;
  readonly arcs: number;
  readonly area: number;
}

/** What ezdxf (Debian package `python3-ezdxf`) says of drawings, in their order. */
export function ezdxfReport(drawings: readonly string[]): EzdxfReport[] {
  const folder = mkdtempSync(join(tmpdir(), 'disc-dxf-'));
  const script = `
import sys, json, math, ezdxf
from ezdxf.math import bulge_to_arc
out = []
for name in sys.argv[1:]:
    doc = ezdxf.readfile(name)
    arcs = 0; area = 0.0
    for line in doc.modelspace().query('LWPOLYLINE'):
        points = line.get_points('xyb')
        if not line.closed: continue
        for (x0, y0, b), (x1, y1, _) in zip(points, points[1:] + points[:1]):
            area += (x0 * y1 - x1 * y0) / 2
            if b:
                arcs += 1
                centre, start, end, radius = bulge_to_arc((x0, y0), (x1, y1), b)
                turn = 4 * math.atan(b)
                area += radius * radius * (turn - math.sin(turn)) / 2
    out.append({'errors': len(doc.audit().errors), 'units': doc.units, 'arcs': arcs, 'area': area})
print(json.dumps(out))`;
  try {
    const files = drawings.map((drawing, index) => {
      const file = join(folder, `${index}.dxf`);
      writeFileSync(file, drawing);
      return file;
    });
    return JSON.parse(execFileSync('/usr/bin/python3', ['-c', script, ...files], { encoding: 'utf8' }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
