using Waywright.Kernel;

return args is ["session", .. var rest] ? await SessionHost.ServeAsync(rest) : 0;
