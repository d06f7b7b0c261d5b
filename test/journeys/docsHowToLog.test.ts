import { shownPages, testShownPages } from '../support/shownPages.ts';

testShownPages(shownPages.slice(28));
