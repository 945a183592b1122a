"use client";

import { useEffect, useId, useRef, useState } from "react";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { useOnDevice } from "@/app/_ui/use-on-device";
import styles from "./build.module.css";

/** How long "copied" stands. */
const SAID_MS = 4000;

/** An address to read, to copy, and on a phone to hand on. */
export function CopyAddress({ token }: { token: string }) {
	const { say } = useReader();
	const id = useId();
	const field = useRef<HTMLInputElement>(null);
	const isOnDevice = useOnDevice();
	const [isCopied, setCopied] = useState(false);
	const address = isOnDevice
		? new URL(`/build/${token}`, window.location.origin).href
		: `/build/${token}`;
	useEffect(() => {
		if (!isCopied) return;
		const timer = setTimeout(() => setCopied(false), SAID_MS);
		return () => clearTimeout(timer);
	}, [isCopied]);
	const copy = async () => {
		field.current?.select();
		try {
			await navigator.clipboard.writeText(address);
			setCopied(true);
		} catch {
			// No right, or a page by plain http: it stands selected, to be copied by hand.
		}
	};
	const canShare = isOnDevice && typeof navigator.share === "function";
	return (
		<div className={styles.address}>
			<label htmlFor={id}>{say("online.save.address")}</label>
			<input
				id={id}
				ref={field}
				type="text"
				readOnly
				value={address}
				onFocus={(event) => event.target.select()}
			/>
			<div className={styles.row}>
				<Button onClick={() => void copy()}>{say("online.save.copy")}</Button>
				{canShare && (
					<Button
						onClick={() => {
							navigator
								.share({ title: say("online.picture.label"), url: address })
								// Closing the device's own list is no failure.
								.catch(() => undefined);
						}}
					>
						{say("online.save.share")}
					</Button>
				)}
				<span role="status" className={styles.good}>
					{isCopied && say("online.save.copied")}
				</span>
			</div>
		</div>
	);
}
