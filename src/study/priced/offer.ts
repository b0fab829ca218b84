import { own } from '../../scenario/values/raw.js';

/** What is known of a change that the scenario names: its price, when it is there, what it needs. */
export interface Offer {
  /** The changes under `costs: changes` that are made with it. */
  readonly names: readonly string[];
  /** Of all that is money here. */
  readonly currency: string;
  /** Money, once; null: that of one of them is not given. */
  readonly price: number | null;
  /** The same a unit of the programme; null also without a quantity. */
  readonly pricePerUnit: number | null;
  /** Money a day of the calendar once it is made; it is in the change of the cost of a unit. */
  readonly day: number;
  /** From order to use, `5 months`; null: at once. */
  readonly readyAfter: string | null;
  /** How often it can be made; null: no limit is given, or several are made together. */
  readonly atMost: number | null;
  /** Changes without which it cannot be made, and which were not made with it. */
  readonly needs: readonly string[];
}

/** What is known of a variant that is a change with a name. */
export function offered(
  offers: Readonly<Record<string, Offer>> | undefined,
  key: string,
): { readonly offer?: Offer } {
  const offer = own(offers ?? {}, key);
  return offer === undefined ? {} : { offer };
}
