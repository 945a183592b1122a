"use client";

import { Button } from "./button";

export const PrintButton = () => (
	<Button look="main" onClick={() => window.print()}>
		Print
	</Button>
);
