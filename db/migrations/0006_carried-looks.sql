CREATE TABLE `carried_look` (
	`session_id` text NOT NULL,
	`student_id` text NOT NULL,
	`fundamental_id` text NOT NULL,
	`club_group` text NOT NULL,
	`said_by` text NOT NULL,
	`policy_version` text NOT NULL,
	`noise_model_name` text NOT NULL,
	`body` text NOT NULL,
	`batch_id` text NOT NULL,
	PRIMARY KEY(`session_id`, `fundamental_id`, `club_group`),
	FOREIGN KEY (`session_id`) REFERENCES `session`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`batch_id`) REFERENCES `import_batch`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `carried_look_student` ON `carried_look` (`student_id`);--> statement-breakpoint
ALTER TABLE `academy` ADD `clock_seen_at` text;--> statement-breakpoint
ALTER TABLE `charge` ADD `from_coach_id` text REFERENCES person(user_id);--> statement-breakpoint
ALTER TABLE `charge` ADD `note` text;--> statement-breakpoint
ALTER TABLE `family_link` ADD `renewed_at` text;--> statement-breakpoint
ALTER TABLE `family_link` ADD `renewed_by` text;