import type { HeadPlan } from '../../../core/head/index.ts';
import { shownNumber } from '../../parts/numbers.ts';
import { words } from '../../words/en.ts';

/** Where each channel stands, in numbers. */
export function PlacesTable({ head }: { readonly head: HeadPlan }) {
  const text = words.head;
  return (
    <details>
      <summary>{text.placesTable}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{text.channel}</th>
            <th scope="col">{text.track}</th>
            <th scope="col">{text.radius}</th>
            <th scope="col">{text.angle}</th>
          </tr>
        </thead>
        <tbody>
          {head.channels.map(({ channel, track, radiusMm, angleDeg }) => (
            <tr key={channel}>
              <th scope="row">{channel}</th>
              <td>{track}</td>
              <td>{shownNumber(radiusMm)}</td>
              <td>{shownNumber(angleDeg)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
