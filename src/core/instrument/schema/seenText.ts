/**
 * Characters that leave no mark on paper: controls, breaks, joiners, fillers, and marks that reverse the direction of
 * writing. Inside the brackets of a pattern.
 *
 * @source Unicode 15.1: General_Category Cc and Cf, Default_Ignorable_Code_Point, and the blank U+2800.
 */
const UNSEEN =
  '\\u0000-\\u001f\\u007f-\\u009f\\u00ad\\u034f\\u061c\\u115f\\u1160\\u17b4\\u17b5\\u180b-\\u180f\\u200b-\\u200f' +
  '\\u2028-\\u202e\\u2060-\\u206f\\u2800\\u3164\\ufeff\\uffa0\\ufff0-\\ufffb';

/** Halves of a character of two; alone they are none. */
const HALVES = '\\ud800-\\udfff';

/** Whole characters of two halves, but for the tags of plane 14, which cannot be seen. */
const PAIRS = '[\\ud800-\\udb3f\\udb41-\\udbff][\\udc00-\\udfff]|\\udb40[\\udd00-\\udfff]';

/**
 * Empty text, or one line with something to see in it and nothing that hides: names are printed on sheets and written into
 * programs.
 */
export const SEEN_TEXT = new RegExp(`^(?=$|.*\\S)(?:[^${UNSEEN}${HALVES}]|${PAIRS})*$`);

/** Every character that would break a line or hide in it. */
export const UNSEEN_MARKS = new RegExp(`[${UNSEEN}${HALVES}]`, 'g');
