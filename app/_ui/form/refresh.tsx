"use client";

import { startTransition, useEffect, useState } from "react";
import { askToHand } from "../keep/listen-to-form";

/**
 * Makes a form anew from what it says. While scripts run it is no button of the form's own: Enter in a field goes on saving.
 */
export function Refresh(props: { readonly label: string; readonly action: (data: FormData) => Promise<void> }) {
  const { label, action } = props;
  const [live, setLive] = useState(false);
  useEffect(() => setLive(true), []);
  return live ? (
    <button
      type="button"
      className="say"
      onClick={(event) => {
        const { form } = event.currentTarget;
        if (!form) return;
        const hand = (data: FormData) => startTransition(() => action(data));
        if (askToHand(form, hand) === "nobody") hand(new FormData(form));
      }}
    >
      {label}
    </button>
  ) : null;
}
