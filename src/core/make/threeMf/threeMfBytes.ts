import { strToU8, zipSync } from 'fflate';
import { layOut } from './layOut.ts';
import { modelXml, type ThreeMfPart } from './modelXml.ts';

/** Moment written for every file in the package, so that equal parts give equal bytes; noon is the same day everywhere. */
const FIXED_TIME = '1985-06-01T12:00:00';

const CONTENT_TYPES =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
  '</Types>\n';

const RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
  '<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>' +
  '</Relationships>\n';

/**
 * Parts as one 3MF file: millimetres, a name for each body, a colour for each material, laid out on the bed.
 *
 * @param title - What the file holds.
 * @param parts - Parts to be printed. n ≥ 1
 * @param bedMm - Width of the printer's bed. [mm]
 * @returns The whole file; equal parts give equal bytes in every time zone.
 * @source 3MF Consortium, 3MF Core Specification 1.3; ECMA-376 part 2 (the package).
 * @check test/journeys/solidParts.test.ts (lib3mf, strict)
 */
export function threeMfBytes(title: string, parts: readonly ThreeMfPart[], bedMm: number): Uint8Array {
  const moves = layOut(
    parts.map(({ bodies }) => bodies),
    bedMm,
  );
  return zipSync(
    {
      '[Content_Types].xml': strToU8(CONTENT_TYPES),
      '_rels/.rels': strToU8(RELATIONSHIPS),
      '3D/3dmodel.model': strToU8(modelXml(title, parts, moves)),
    },
    { level: 9, mtime: FIXED_TIME },
  );
}
