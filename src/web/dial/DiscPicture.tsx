import { useId } from 'preact/hooks';
import type { DesignView, LayerView } from '../engine/designView.ts';
import type { Places } from './places.ts';
import { sectorPath } from './places.ts';

/** How a layer is shown. A level is told by its hatching too, never by colour alone. */
function lookOf({ operation, isPattern, level }: LayerView): string {
  if (operation === 'mark') return 'mark';
  if (operation === 'cut') return isPattern ? 'material' : 'blank';
  if (operation === 'engrave') return 'low';
  if (operation === 'copper') return 'copper';
  return level === null ? 'material' : 'ink';
}

/** The blank lies under everything that is printed, engraved or etched on it. */
function inOrder(layers: readonly LayerView[]): readonly LayerView[] {
  const isBlank = (layer: LayerView): boolean => lookOf(layer) === 'blank';
  return [...layers.filter(isBlank), ...layers.filter((layer) => !isBlank(layer))];
}

/** Hatchings of level 0, 1 and 2, and of what lies low or is copper. Sizes are shares of the picture. */
function Hatchings({ id, unit }: { readonly id: string; readonly unit: number }) {
  const line = { class: 'hatch', 'stroke-width': unit * 0.12 };
  const tile = { width: unit, height: unit, patternUnits: 'userSpaceOnUse' };
  return (
    <defs>
      <pattern id={`${id}0`} {...tile}>
        <path d={`M0 ${unit / 2}H${unit}`} {...line} />
      </pattern>
      <pattern id={`${id}1`} {...tile}>
        <circle class="dot" cx={unit / 2} cy={unit / 2} r={unit * 0.16} />
      </pattern>
      <pattern id={`${id}2`} {...tile} patternTransform="rotate(45)">
        <path d={`M0 0V${unit}M0 0H${unit}`} {...line} />
      </pattern>
      <pattern id={`${id}low`} {...tile} patternTransform="rotate(45)">
        <path d={`M0 0V${unit}`} {...line} />
      </pattern>
    </defs>
  );
}

/** The disc or strip itself: every layer that is made of it, its ribs and its index mark. */
export function DiscPicture({ view, places }: { readonly view: DesignView; readonly places: Places }) {
  const id = `h${useId().replace(/[^\w-]/g, '')}`;
  const { viewBox, spotMm } = places;
  const radius = view.instrument.disc.diameterMm / 2;
  return (
    <svg
      class="pattern"
      viewBox={`${viewBox.x} ${viewBox.y} ${viewBox.width} ${viewBox.height}`}
      aria-hidden="true"
    >
      <Hatchings id={id} unit={spotMm * 1.6} />
      {inOrder(view.layers).map((layer) => {
        const look = lookOf(layer);
        const hatch =
          look === 'ink' ? String(layer.level) : look === 'low' || look === 'copper' ? 'low' : null;
        return (
          <g key={layer.name + layer.operation}>
            <path
              class={look}
              d={layer.path}
              fill-rule="evenodd"
              {...(look === 'ink' && layer.fill ? { fill: layer.fill } : {})}
            />
            {hatch === null ? null : <path d={layer.path} fill-rule="evenodd" fill={`url(#${id}${hatch})`} />}
          </g>
        );
      })}
      {view.strip
        ? null
        : view.ribs.map((rib) => (
            <path class="rib" key={`${rib.fromDeg} ${rib.innerRadiusMm}`} d={sectorPath(rib)} />
          ))}
      <path
        class="index"
        d={
          view.strip
            ? `M0 0l${spotMm} ${spotMm * 1.6}h${-2 * spotMm}z`
            : `M0 ${-radius * 1.02}l${radius * 0.035} ${-radius * 0.07}h${-radius * 0.07}z`
        }
      />
    </svg>
  );
}
