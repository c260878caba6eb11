import { Page } from '../../../parts/page.tsx';

/** Who was handed which revision. */
export function TransmittalScreen() {
  return <Page title="Transmittal list">{null}</Page>;
}
