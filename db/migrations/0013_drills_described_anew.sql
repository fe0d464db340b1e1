ALTER TABLE `drill` ADD `retired_on` text;--> statement-breakpoint
ALTER TABLE `drill` ADD `earlier` text DEFAULT '[]' NOT NULL;