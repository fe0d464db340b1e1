ALTER TABLE `capture` ADD `pointing_stick_lean` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `across_stick_slope` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `plumb_lean` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `lens_height_cm` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `hands_height_cm` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `distance_cm` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `beside_hands_cm` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `frames_per_second` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `shutter_per_second` real;--> statement-breakpoint
ALTER TABLE `capture` ADD `placed_by` text;