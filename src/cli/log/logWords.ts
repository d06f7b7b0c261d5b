import type { RememberedMoment } from '../../app/api.ts';
import type { DateOrder, LogSpeedUnit } from '../../core/record/index.ts';

/** What stands behind `log`, read. */
export interface LogWords {
  readonly from: readonly string[];
  readonly store: string;
  readonly raw?: string;
  readonly station?: string;
  readonly zone?: string;
  readonly dateOrder?: DateOrder;
  readonly speedUnit?: LogSpeedUnit;
  readonly headingAs?: 'degrees' | 'positions';
  readonly decimalComma?: boolean;
  readonly moment?: readonly RememberedMoment[];
  readonly old?: boolean;
  readonly rebuild?: boolean;
  readonly whatIf?: boolean;
  /** Where alerts go. */
  readonly alert: readonly string[];
  readonly group?: string;
  readonly worker?: string;
  /** Port of the local web interface. [-] */
  readonly listen?: number;
}
