CREATE TABLE `told` (
	`id` text PRIMARY KEY NOT NULL,
	`student_id` text NOT NULL,
	`club_group` text NOT NULL,
	`kind` text NOT NULL,
	`text` text NOT NULL,
	`findings` text NOT NULL,
	`day` text NOT NULL,
	`who` text NOT NULL,
	`recorded_at` text NOT NULL,
	`voided_at` text,
	FOREIGN KEY (`student_id`) REFERENCES `student`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `told_student` ON `told` (`student_id`,`recorded_at`);