import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { Link } from 'wouter-preact';
import type { AsCastReport } from '../../../../assess/as-cast/as-cast-report.ts';
import type { StandingSide } from '../../../../drawing/as-cast/deviation-marks.ts';
import { seeDeviations } from '../../../../drawing/as-cast/deviation-marks.ts';
import { drawDeviationPicture } from '../../../../drawing/as-cast/deviation-picture.ts';
import type { Panel } from '../../../../job/documents/panel.ts';
import { DrawingView } from '../../../parts/drawing-view.tsx';
import { Empty } from '../../../parts/notice.tsx';
import { Section } from '../../../parts/page.tsx';
import { units, writeQuantity } from '../../../parts/units.ts';
import styles from './as-cast.module.css';
import { SideChoice } from './side-choice.tsx';

/** The picture is laid out on a sheet of this size [mm]. */
const ROOM = { width: 240, height: 130, text: 2.7 } as const;

/** Where everything came out, on the panel. */
export function DeviationsPart({
  panel,
  report,
  surveyAt,
}: {
  readonly panel: Panel;
  readonly report: AsCastReport;
  /** Address at which a survey is read in. */
  readonly surveyAt: string;
}) {
  const side = useSignal<StandingSide>(panel.drawnFace);
  const system = units.value;
  const { drawing, magnification } = useMemo(
    () =>
      drawDeviationPicture(seeDeviations(panel, report.inserts, side.value), ROOM, (mm) => writeQuantity('length', mm)),
    [panel, report, side.value, system],
  );
  if (report.surveys.length === 0)
    return (
      <Empty title="Nothing is surveyed">
        <p>
          Where the inserts came out is not known. Read in a survey of the instrument, or have the hard panel taped:
          then every connection is computed again with what was found.
        </p>
        <Link href={surveyAt}>Read a survey</Link>
      </Empty>
    );
  return (
    <Section
      title="Where the inserts came out"
      lead={`Arrows ×${magnification}: the panel is to scale, what lies off is drawn ${magnification} times larger. Hollow: as designed. Solid: as cast. Boxes: what an insert may be off, ×${magnification} too.`}
      actions={<SideChoice panel={panel} side={side} />}
    >
      <div class={styles.picture}>
        <DrawingView
          drawing={drawing}
          title={`Where the inserts of ${panel.mark} came out, seen on the ${side.value} face, deviations ${magnification} times larger`}
        />
      </div>
    </Section>
  );
}
