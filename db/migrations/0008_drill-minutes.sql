ALTER TABLE `drill` ADD `minutes_a_day` integer;--> statement-breakpoint
ALTER TABLE `drill_assignment` ADD `minutes_a_day` integer;