import { createORPCClient } from '@orpc/client';
import { RPCLink } from '@orpc/client/fetch';
import type { ContractRouterClient } from '@orpc/contract';
import type { contract } from '../../core/contract/contract.ts';
import type { StandingPoint } from '../../core/model/result.ts';
import { remember } from './remember.ts';

/** Calls the host. Types, names and checks all come from the contract. */
export const client: ContractRouterClient<typeof contract> = createORPCClient(
  new RPCLink({
    url: `${window.location.origin}/rpc`,
    headers: (): Record<string, string> => {
      const { personId } = remember.getState();
      return personId === null ? {} : { 'x-everybolt-person': personId };
    },
  }),
);

export type Reply<T> =
  | { ok: true; seq: number; value: T }
  | {
      ok: false;
      fault: { code: string; sentence: string; points?: readonly StandingPoint[] | undefined };
    };

/** A reading that the program refused; no answer at all is another error. */
export class Refused extends Error {}

/** The value of a reading reply; a refusal is thrown with its sentence, for the query that asked. */
export function valueOf<T>(reply: Reply<T>): { seq: number; value: T } {
  if (!reply.ok) throw new Refused(reply.fault.sentence);
  return { seq: reply.seq, value: reply.value };
}
