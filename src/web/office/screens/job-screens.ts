// What is done with a job as a whole, as one script.
export { CatalogueScreen } from './catalogue/catalogue-screen.tsx';
export { DetailsScreen } from './details/details-screen.tsx';
export { ImportScreen } from './import/import-screen.tsx';
export { PartsScreen } from './parts/parts-screen.tsx';
export { PoursScreen } from './pours/pours-screen.tsx';
export { RevisionsScreen } from './revisions/revisions-screen.tsx';
export { TransmittalScreen } from './revisions/transmittal-screen.tsx';
export { RulesScreen } from './rules/rules-screen.tsx';
