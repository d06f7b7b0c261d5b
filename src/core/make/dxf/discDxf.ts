import { Colors, DxfWriter, Units } from '@tarikjabiri/dxf';
import { discLayers, type DiscPlan, type Operation } from '../../disc/index.ts';
import { dxfPen } from './dxfPen.ts';

/** Colour that tells layers apart on screen; what is done is said by the layer's name. */
const colourOf: Readonly<Record<Operation, Colors>> = {
  cut: Colors.White, // black on a white screen
  engrave: Colors.Blue,
  mark: Colors.Magenta,
  print: Colors.Green,
  copper: Colors.Yellow,
};

/**
 * The disc as a DXF drawing in millimetres: one layer for each thing that is done, with true arcs.
 *
 * Seen from the patterned face, disc angle 0 straight up, axis at the origin.
 *
 * @param plan - A disc plan.
 * @returns The whole file; equal plans give equal bytes.
 * @check test/journeys/discDxf.test.ts (ezdxf opens and audits it; read back by separate code, decoded all round)
 */
export function discDxf(plan: DiscPlan): string {
  const drawing = new DxfWriter();
  drawing.setUnits(Units.Millimeters);
  drawing.setVariable('$LASTSAVEDBY', { 1: 'vanewright' });
  for (const layer of discLayers(plan)) {
    if (!drawing.tables.layerTable.exist(layer.name)) {
      drawing.addLayer(layer.name, colourOf[layer.operation], 'Continuous');
    }
    const { pen, end } = dxfPen(drawing, layer.name);
    layer.draw(pen);
    end();
  }
  drawing.setCurrentLayerName('cut');
  return `${drawing.stringify().trimEnd()}\n`;
}
