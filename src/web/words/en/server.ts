/** Words about the server behind the page. */
export const server = {
  lost: 'The server does not answer.',
  lostHint:
    'What you change stays in this page and is saved as soon as it is back. Start it again with: vanewright open',
  tokenTitle: 'This workbench asks for its token.',
  tokenHint: 'It stands behind #token= in the address that vanewright open printed.',
  token: 'Token',
  tokenSend: 'Open',
};
