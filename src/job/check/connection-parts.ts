import type { CastIn } from '../documents/cast-in.ts';
import type { CatalogueItem } from '../documents/catalogue.ts';
import type { Fixture } from '../documents/fixture.ts';
import type { Panel } from '../documents/panel.ts';
import type { Path } from '../sift.ts';

/** What a connection refers to, as far as it is there and right. */
export interface ConnectionParts {
  readonly panel: Panel | undefined;
  readonly fixture: Fixture | null;
  readonly inserts: readonly {
    readonly path: Path;
    readonly hole: string | null;
    readonly castIn: CastIn;
    readonly item: CatalogueItem | undefined;
  }[];
}
