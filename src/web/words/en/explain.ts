/** Words of the page that tells everyone how the disc works. */
export const explain = {
  about: 'This is the page as others will see it. It is one file, works offline, and is told three ways.',
  frame: 'How your disc works',
  save: 'Save the page as one file',
  file: 'how-it-works.html',
  print: 'To print the poster, use the button at the end of the page itself.',
  kitTitle: 'Everything for others to build it',
  kit: 'The command writes the whole kit: all files, this page, certificate, photos, licences and one zip.',
  wait: 'The page is being written …',
  says: 'The page is ready to publish.',
  saysNo: 'This file cannot be read yet, so there is no disc to tell of. Mend what stands at the top.',
};
