import { SerialPort } from 'serialport';
import type { Clock, SerialPorts } from '../../ports/index.ts';
import { serialSource } from './serialSource.ts';

/**
 * Serial ports that this machine finds by itself, and those that the maker names besides.
 *
 * @param named - Paths such as those below /dev/serial/by-id.
 */
export function serialPorts(named: readonly string[], clock: Clock): SerialPorts {
  return {
    async list() {
      const found = await SerialPort.list().catch(() => []);
      // Old computers have ports that nothing is plugged into; they say nothing about a plug.
      const plugged = found.filter(({ vendorId, pnpId }) => vendorId !== undefined || pnpId !== undefined);
      return [
        ...named.map((path) => ({ path, label: '' })),
        ...plugged.map(({ path, manufacturer }) => ({ path, label: manufacturer ?? '' })),
      ];
    },
    open: (path, baud) => serialSource({ path, baud, station: 'turn' }, clock),
  };
}
