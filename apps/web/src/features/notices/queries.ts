import { infiniteQueryOptions, queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import {
  changeNoticePreferences,
  closeFeed,
  countNotices,
  listNotices,
  mailSummary,
  noticePreferences,
  readAllNotices,
  readNotice,
  renewFeed,
  retryMail,
} from '#contracts/notices.ts';
import { call } from '#web/ui/http.ts';

const minute = 60_000;

export const unreadQuery = queryOptions({
  queryKey: ['notices', 'count'],
  queryFn: ({ signal }) => call(countNotices, { signal }),
  staleTime: minute,
  refetchInterval: minute,
});

export const noticesQuery = (unread: boolean) =>
  infiniteQueryOptions({
    queryKey: ['notices', 'list', unread],
    queryFn: ({ signal, pageParam }) =>
      call(listNotices, {
        query: { ...(unread && { unread: 'true' }), ...(pageParam && { cursor: pageParam }) },
        signal,
      }),
    initialPageParam: null as string | null,
    getNextPageParam: (page) => page.next,
  });

export const preferencesQuery = queryOptions({
  queryKey: ['notices', 'preferences'],
  queryFn: ({ signal }) => call(noticePreferences, { signal }),
});

export const mailQuery = queryOptions({
  queryKey: ['notices', 'mail'],
  queryFn: ({ signal }) => call(mailSummary, { signal }),
});

const useForget = () => {
  const queries = useQueryClient();
  return () => queries.invalidateQueries({ queryKey: ['notices'] });
};

export const useMarkRead = () => {
  const onSettled = useForget();
  return useMutation({
    mutationFn: (id: string | 'all') =>
      id === 'all' ? call(readAllNotices, {}) : call(readNotice, { params: { id } }),
    onSettled,
  });
};

export const useSettings = () => {
  const onSuccess = useForget();
  return {
    mail: useMutation({ mutationFn: (mail: boolean) => call(changeNoticePreferences, { body: { mail } }), onSuccess }),
    renew: useMutation({ mutationFn: () => call(renewFeed, {}), onSuccess }),
    close: useMutation({ mutationFn: () => call(closeFeed, {}), onSuccess }),
    retry: useMutation({ mutationFn: () => call(retryMail, {}), onSuccess }),
  };
};
