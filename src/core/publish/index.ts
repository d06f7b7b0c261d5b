export type { GivenCertificate } from './givenCertificate.ts';
export { photoFiles, wantedPhotos, type Photo } from './photoList.ts';
export { checkAdditions, publishKit, type Kit, type KitRequest } from './publishKit.ts';
export { licenceNames } from './terms.ts';
