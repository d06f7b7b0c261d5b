import type { FastifyError, FastifyReply, FastifyRequest } from 'fastify';
import { VanewrightError, type Problem } from '../core/error/index.ts';

/** How each code is said in the words of the web; what is not named here is a bad request. */
const statuses: Readonly<Record<string, number>> = {
  'open/outside-project': 403,
  'open/other-site': 403,
  'open/token': 401,
  'open/no-file': 404,
  'open/no-page': 404,
  'open/no-serial-port': 404,
  'open/serial-busy': 409,
  'log/source-not-found': 404,
  'log/no-such-station': 404,
  'open/changed-elsewhere': 409,
  'open/too-large': 413,
  'open/other-host': 421,
  'open/no-version': 428,
  'open/too-fast': 429,
  'store/in-use': 503,
  'files/disk-full': 507,
  'files/not-writable': 500,
};

/** Sends problems with the status of the first of them. */
export function sendProblems(reply: FastifyReply, problems: readonly Problem[]): FastifyReply {
  return reply.status(statuses[problems[0]?.code ?? ''] ?? 400).send({ problems });
}

/** Sends one problem. */
export function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  return sendProblems(reply, [problem]);
}

function tooLarge(mostBytes: number): Problem {
  return {
    code: 'open/too-large',
    what: 'That is larger than such a file can be.',
    where: 'body',
    got: `more than ${mostBytes} bytes`,
    allowed: `${mostBytes} bytes or fewer`,
    fix: 'Check that it is the right file, or split a long recording.',
  };
}

function unreadable(request: FastifyRequest, error: FastifyError): Problem {
  return {
    code: 'open/request',
    what: 'The request cannot be read.',
    where: `${request.method} ${request.routeOptions.url ?? '?'}`,
    got: error.message.slice(0, 200),
    allowed: 'a request as /openapi.json describes it',
    fix: 'Load the page again; with a program of your own, look into /openapi.json.',
  };
}

/** What went wrong, in the five answers; a fault of ours says so and no more, the rest goes to `say`. */
export function answerErrors(say: (text: string) => void) {
  return (
    error: FastifyError | VanewrightError,
    request: FastifyRequest,
    reply: FastifyReply,
  ): FastifyReply => {
    if (error instanceof VanewrightError) return sendProblems(reply, error.problems);
    if (error.statusCode === 413) return sendProblem(reply, tooLarge(request.routeOptions.bodyLimit ?? 0));
    const status = error.statusCode ?? 500;
    if (status < 500) return reply.status(status).send({ problems: [unreadable(request, error)] });
    say(error.stack ?? String(error));
    return reply.status(500).send({
      problems: [
        {
          code: 'open/fault',
          what: 'The server could not do that. This is a fault in vanewright, not in your file.',
          where: `${request.method} ${request.routeOptions.url ?? '?'}`,
          got: 'an error that nobody thought of; the terminal shows it',
          allowed: 'an answer',
          fix: 'Try again; if it stays, please report it with what the terminal shows.',
        },
      ],
    });
  };
}
