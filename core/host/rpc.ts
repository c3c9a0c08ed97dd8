import { onError } from '@orpc/server';
import { RPCHandler } from '@orpc/server/fetch';
import type { Workshop } from '../store/workshop.ts';
import { makeRouter } from '../usecases/router.ts';
import type { AppParts } from './app.ts';

/** Answers the contract over one open workshop. Who acts is only believed where the workshop knows that person. */
export function rpcOver(workshop: Workshop, onFault: (error: unknown) => void): AppParts['rpc'] {
  const handler = new RPCHandler(makeRouter(), {
    interceptors: [
      onError((error) => {
        onFault(error);
      }),
    ],
  });
  return async (request, actor) => {
    const known = actor !== null && workshop.person(actor) !== null ? actor : null;
    const { matched, response } = await handler.handle(request, {
      prefix: '/rpc',
      context: { workshop, actor: known },
    });
    return matched ? response : null;
  };
}
